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
        using var draft = new Draft(disk, full, like);
        disk.Write(draft.Stream, bytes);
        return draft.Finish(replace);
    }

    /// <summary>Writes a file that is made while it is written; false where the name is taken and may not be.</summary>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte}, bool)"/>
    /// <param name="full">The full path, in a folder that exists.</param>
    /// <param name="make">Writes all of it.</param>
    /// <param name="replace">Whether a file of that name may be replaced.</param>
    public static bool Write(string full, Action<Stream> make, bool replace)
    {
        using var draft = new Draft(Disk.Real, full, null);
        make(draft.Stream);
        return draft.Finish(replace);
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

    /// <summary>The file under a name of its own until it is whole.</summary>
    private sealed class Draft : IDisposable
    {
        private readonly Disk _disk;
        private readonly string _full;
        private readonly string _temporary;

        public Draft(Disk disk, string full, string? like)
        {
            // A short name of its own, so that a long file name does not grow beyond what the disk allows.
            var folder = Path.GetDirectoryName(full) ?? throw new IOException("it is the name of a device or a drive, not of a file");
            (_disk, _full, _temporary) = (disk, full, Path.Combine(folder, $".viscolog-{Guid.NewGuid():N}.tmp"));
            // A file that is written anew keeps the rights that it had.
            Stream = Disk.New(_temporary, Disk.ModeOf(like ?? full));
        }

        public FileStream Stream { get; }

        /// <summary>Gives it its name; false where that is taken and may not be.</summary>
        public bool Finish(bool replace)
        {
            _disk.Flush(Stream);
            Stream.Dispose();
            if (!Move(_disk, _temporary, _full, replace))
            {
                return false;
            }

            _disk.FlushFolder(Path.GetDirectoryName(_full)!);
            return true;
        }

        public void Dispose()
        {
            Stream.Dispose();
            _disk.Delete(_temporary);
        }
    }
}
