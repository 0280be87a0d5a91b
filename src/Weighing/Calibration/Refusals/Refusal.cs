namespace ScaleLink.Weighing.Calibration;

/// <summary>Why something was not done, under a code that stays the same from version to version.</summary>
/// <param name="Code">For example "SL-301".</param>
/// <param name="Message">What is wrong, with the figures of this case.</param>
/// <param name="Mend">What to do next.</param>
public sealed record Refusal(string Code, string Message, string Mend);

/// <summary>One entry of the catalogue.</summary>
/// <param name="Code">Stable.</param>
/// <param name="Title">What is wrong, in general.</param>
/// <param name="Mend">What to do next.</param>
public sealed record RefusalKind(string Code, string Title, string Mend)
{
    /// <summary>This refusal with the figures of one case.</summary>
    public Refusal Because(string detail) => new(Code, $"{Title}: {detail}", Mend);

    /// <summary>True when <paramref name="refusal"/> is of this kind.</summary>
    public bool Is(Refusal refusal) => refusal?.Code == Code;
}
