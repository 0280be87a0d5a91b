namespace ScaleLink.Measure;

/// <summary>How far the picture of the beam reaches, the same on page and terminal; percent of cross weight.</summary>
public static class BeamRange
{
    /// <summary>Both diagonals carry the same.</summary>
    public const double Even = 50;

    /// <summary>So far beside the target it tilts fully.</summary>
    public const double Span = 3;

    /// <summary>So far beside the target the lens ends.</summary>
    public const double Lens = 0.5;
}
