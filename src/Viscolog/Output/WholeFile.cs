namespace Viscolog.Output;

/// <summary>Writes files that are there whole, on the disk, or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes a file; false where the name is taken and may not be.</summary>
    /// <param name="full">The full path, in a folder that exists.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="replace">Whether a file of that name may be replaced.</param>
    /// <exception cref="IOException">It can't be written; what was there is as it was.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static bool Write(string full, ReadOnlySpan<byte> bytes, bool replace) => Write(Disk.Real, full, bytes, replace);

    /// <summary>The same on a certain disk.</summary>
    /// <param name="disk">The disk.</param>
    /// <param name="full">The full path, in a folder that exists.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="replace">Whether a file of that name may be replaced.</param>
    /// <param name="like">A file whose readers may read this one too, and nobody else; null to go by the file that is replaced.</param>
    public static bool Write(Disk disk, string full, ReadOnlySpan<byte> bytes, bool replace, string? like = null)
    {
        // A short name of its own, so that a long file name does not grow beyond what the disk allows.
        var folder = Path.GetDirectoryName(full)!;
        var temporary = Path.Combine(folder, $".viscolog-{Guid.NewGuid():N}.tmp");
        try
        {
            // A file that is written anew keeps the rights that it had.
            using (var stream = Disk.New(temporary, Disk.ModeOf(like ?? full)))
            {
                disk.Write(stream, bytes);
                disk.Flush(stream);
            }

            if (!Move(disk, temporary, full, replace))
            {
                return false;
            }

            disk.FlushFolder(folder);
            return true;
        }
        finally
        {
            disk.Delete(temporary);
        }
    }

    private static bool Move(Disk disk, string temporary, string full, bool replace)
    {
        if (!replace && !Claim(full))
        {
            return false;
        }

        var moved = false;
        try
        {
            disk.Move(temporary, full, overwrite: true);
            return moved = true;
        }
        finally
        {
            if (!moved && !replace)
            {
                disk.Delete(full);
            }
        }
    }

    /// <summary>
    /// Takes the name by creating an empty file, which the system lets only one of several programs do; false where it is taken.
    /// File.Move without overwrite looks first and renames then, so two programs at once could both believe they had won.
    /// </summary>
    private static bool Claim(string full)
    {
        try
        {
            using var claim = new FileStream(full, FileMode.CreateNew, FileAccess.Write, FileShare.None);
            return true;
        }
        catch (IOException) when (Path.Exists(full))
        {
            return false;
        }
    }
}
