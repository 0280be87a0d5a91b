using ScaleLink.Client.Runtime;

namespace Client.Tests.Terminal;

/// <summary>Shells that write into strings.</summary>
internal static class Shells
{
    public static Shell Redirected(TextWriter? output = null, TextWriter? error = null) => new()
    {
        Out = TextWriter.Synchronized(output ?? new StringWriter()),
        Error = TextWriter.Synchronized(error ?? new StringWriter()),
        Time = TimeProvider.System,
        CanRedraw = false,
        HasColour = false,
        Glyphs = Glyphs.Rich,
        Size = () => (120, int.MaxValue),
    };

    /// <summary>In pounds and inches.</summary>
    public static Shell Pounds(TextWriter? output = null) => Redirected(output) with { Glyphs = Glyphs.Rich with { Units = ScaleLink.Measure.Units.PoundInch } };

    public static Shell Terminal(TextWriter output, int width = 80, int height = 24, bool hasColour = true) => Redirected(output) with
    {
        CanRedraw = true,
        HasColour = hasColour,
        Size = () => (width, height),
    };
}
