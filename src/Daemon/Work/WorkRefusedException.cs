using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Work;

/// <summary>A step that cannot be taken as things stand.</summary>
public sealed class WorkRefusedException(string code, string message, string mend) : Exception(message)
{
    /// <summary>Code, message and mend.</summary>
    public Finding Finding { get; } = new(code, message, mend);
}
