using System.Text;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.RunFiles;

public sealed class LongFileTests
{
    private const string Head = "# base_g: 120\n# thickener: TA\n";

    [Fact]
    public void A_long_file_is_read_whole()
    {
        var rows = Sweep.Tries(100_000, 20_000);
        var text = new StringBuilder(Head).Append("thickener,added_g,stir_s,wait_s,viscosity_mpas,note,bath\n");
        for (var i = 1; i <= rows; i++)
        {
            text.Append(FormattableString.Invariant($"TA,0.001,10,{i},{i + 0.5},\"row {i}\",b{i}\n"));
        }

        var file = FileText.Read(text.ToString());
        Assert.Equal((rows, 3 * rows), (file.Rows.Length, file.Run.Entries.Length));
        // Texts of this size compare faster than the test framework compares them.
        Assert.Equal(FileText.Whole(file), FileText.Whole(FileText.Read(FileText.Write(file))));
    }
}
