namespace ScaleLink.Probing.Loading;

/// <summary>How a number is written where it stands.</summary>
internal enum NumberForm
{
    /// <summary>In the decoded message itself: a cell of a pad frame, a number of a text line.</summary>
    Plain,

    /// <summary>One register, signed.</summary>
    S16,

    /// <summary>Two registers, signed, the high half first.</summary>
    S32HighFirst,

    /// <summary>Two registers, signed, the low half first.</summary>
    S32LowFirst,

    /// <summary>Two registers, IEEE 754 single, the high half first.</summary>
    F32HighFirst,

    /// <summary>Two registers, IEEE 754 single, the low half first.</summary>
    F32LowFirst,
}

/// <summary>Where in what a device says a number stands.</summary>
/// <param name="At">Cell, place in the line, or first register; from 0.</param>
/// <param name="Form">How it is written there.</param>
internal readonly record struct NumberPlace(int At, NumberForm Form)
{
    /// <summary>How many places it takes, from <see cref="At"/> on.</summary>
    public int Length => Form is NumberForm.Plain or NumberForm.S16 ? 1 : 2;

    /// <summary>Whether both take a place.</summary>
    public bool Overlaps(NumberPlace other) => At < other.At + other.Length && other.At < At + Length;
}
