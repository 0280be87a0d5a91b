namespace ScaleLink.Daemon.Links;

/// <summary>What a pad says of itself.</summary>
/// <param name="SerialNumber">Printed on the pad; binds it to its corner, its zero and its calibration.</param>
/// <param name="Firmware">Version text of the pad's program.</param>
/// <param name="BootId">Differs at each start of the pad.</param>
/// <param name="Cells">Number of load cells, 1 to 8.</param>
/// <param name="RateHz">Samples a second.</param>
/// <param name="CapacityKg">Largest load.</param>
internal sealed record PadIdentity(string SerialNumber, string Firmware, uint BootId, int Cells, double RateHz, double CapacityKg)
{
    /// <summary>Whether zero and calibration of the other hold for this one, as far as the pads say.</summary>
    public bool IsSamePad(PadIdentity? other) => other is not null && (SerialNumber, Cells, CapacityKg) == (other.SerialNumber, other.Cells, other.CapacityKg);
}
