namespace ScaleLink.Daemon.Pipeline;

/// <summary>Zeros by pad, kept across restarts.</summary>
public interface IZeroStore
{
    /// <summary>The zero last taken of that pad.</summary>
    ZeroPoint? Latest(string serialNumber);

    /// <summary>Every zero of that pad, oldest first.</summary>
    IReadOnlyList<ZeroPoint> History(string serialNumber);

    /// <summary>Writes a zero; it is on the disk when this returns.</summary>
    void Append(ZeroPoint zero);
}
