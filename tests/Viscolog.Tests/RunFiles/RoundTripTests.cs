using System.Text;
using CsCheck;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.Tests.RunFiles;

public class RoundTripTests
{
    [Fact]
    public void What_is_written_reads_back_the_same()
        => RunFileGen.Files.Sample(
            file =>
            {
                Enter();
                Assert.Equal(FileText.Whole(file), FileText.Whole(FileText.Read(FileText.Write(file))));
            },
            iter: 3000);

    [Fact]
    public void Written_again_it_is_the_same_text()
        => RunFileGen.Files.Sample(file =>
        {
            Enter();
            var text = FileText.Write(file);
            Assert.Equal(text, FileText.Write(FileText.Read(text)));
        });

    [Fact]
    public void Semicolons_and_decimal_commas_say_the_same()
        // A point in a thickener's name would turn into a comma with the numbers beside it.
        => RunFileGen.Files.Where(
            f => f.Run.Thickeners.All(t => !t.Name.Contains('.', StringComparison.Ordinal))
                && f.UnknownTraits.All(t => !t.Value.Contains('.', StringComparison.Ordinal)))
            .Sample(
                file =>
                {
                    Enter();
                    Assert.Equal(FileText.Whole(file), FileText.Whole(FileText.Read(Semicolons.Write(file))));
                },
                iter: 1000);

    [Fact]
    public void A_file_with_one_change_is_read_or_refused_with_one_line()
        => Gen.Select(RunFileGen.Files, Gen.Int[0, int.MaxValue], Gen.Char["09.,;\"#:-e\n\r=a \0"], Gen.Int[0, 2])
            .Sample((file, at, c, how) =>
        {
            var text = FileText.Write(file);
            var i = at % text.Length;
            var changed = how switch
            {
                0 => text.Remove(i, 1),
                1 => text.Insert(i, c.ToString()),
                _ => text[..i],
            };
            AssertAnswer(Encoding.UTF8.GetBytes(changed));
        });

    [Fact]
    public void Any_bytes_are_read_or_refused_with_one_line()
        => Gen.Byte.Array[0, 60].Sample(bytes => AssertAnswer(bytes));

    [Fact]
    public void Any_text_after_a_header_is_read_or_refused_with_one_line()
        => Gen.Char["19.,;\"#:-e\n\r=a \té"].Array[0, 60].Sample(chars
            => AssertAnswer(
                Encoding.UTF8.GetBytes("# base_g: 120\n# thickener: a\nthickener,added_pct,wait_s,ph,note\n" + new string(chars))));

    /// <summary>Called on the thread of each sample, since samples run on threads of their own.</summary>
    protected virtual void Enter()
    {
    }

    private void AssertAnswer(ReadOnlyMemory<byte> bytes)
    {
        Enter();
        var outcome = RunFileReader.Parse("pot.csv", bytes);
        if (outcome is TableOutcome<RunFile>.Refused refused)
        {
            Assert.StartsWith("pot.csv", refused.Refusal.Text, StringComparison.Ordinal);
            Assert.DoesNotContain(refused.Refusal.Text, char.IsControl);
        }
        else
        {
            var file = Assert.IsType<TableOutcome<RunFile>.Read>(outcome).File;
            Assert.Equal(FileText.Whole(file), FileText.Whole(FileText.Read(FileText.Write(file))));
            Assert.True(file.Run.PotNow().Total.Grams > 0);
        }
    }
}
