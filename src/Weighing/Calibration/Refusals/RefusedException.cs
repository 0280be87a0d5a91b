namespace ScaleLink.Weighing.Calibration;

/// <summary>Thrown where a value cannot be made at all; carries the refusal for the user.</summary>
public sealed class RefusedException(Refusal refusal) : Exception($"{refusal?.Code} {refusal?.Message}. {refusal?.Mend}")
{
    /// <summary>What is wrong and what to do.</summary>
    public Refusal Refusal { get; } = refusal!;
}
