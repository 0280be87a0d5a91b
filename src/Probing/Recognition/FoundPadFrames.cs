using System.Globalization;

namespace ScaleLink.Probing.Recognition;

/// <summary>A pad that speaks pad frames.</summary>
/// <param name="Samples">Samples heard.</param>
/// <param name="SerialNumber">Its own; nothing while it has not said who it is.</param>
/// <param name="Cells">How many load cells, with the serial number.</param>
/// <param name="RateHz">Samples a second, as it says.</param>
/// <param name="CapacityKg">What it may carry, as it says.</param>
internal sealed record FoundPadFrames(int Samples, string? SerialNumber, int? Cells, double? RateHz, double? CapacityKg) : Found
{
    public override string Protocol => "pad-frames";

    public override string Summary => SerialNumber is null
        ? $"{Samples} samples in pad frames"
        : string.Create(CultureInfo.InvariantCulture, $"{Samples} samples in pad frames; {SerialNumber}, {Cells} cells, {RateHz:0.#} a second, {CapacityKg:0.#} kg");

    public override IReadOnlyList<string> Remarks =>
    [
        .. SerialNumber is null ? new[] { "It has not said who it is while it was listened to: listen for longer, or add its serial_number by hand." } : [],
        "It gives no load until its first calibration procedure has found its sensitivity (docs/calibration.md).",
    ];
}
