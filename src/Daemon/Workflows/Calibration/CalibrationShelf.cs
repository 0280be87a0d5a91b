using System.Globalization;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>A calibration, how it came into effect, and whether it is.</summary>
/// <param name="Calibration">What it says.</param>
/// <param name="Adopted">Absent for a calibration of the bay file.</param>
/// <param name="InEffect">It makes its pad's loads, or would if the pad were here.</param>
internal sealed record ShelvedCalibration(PadCalibration Calibration, AdoptedCalibration? Adopted, bool InEffect);

/// <summary>Every calibration that is or was in effect, newest first.</summary>
internal sealed class CalibrationShelf(LiveBay bay, CalibrationLedger ledger)
{
    // Enough digits that a hash names one calibration among a lifetime's.
    private const int FewestDigits = 6;

    /// <summary>Of one pad, or of all.</summary>
    public IReadOnlyList<ShelvedCalibration> All(string? serialNumber = null)
    {
        var here = bay.Pads.Select(p => p.Standing).Where(s => s.Identity is not null && (serialNumber ?? s.Identity.SerialNumber) == s.Identity.SerialNumber).ToList();
        var adopted = ledger.All(serialNumber);
        var newest = adopted.GroupBy(a => a.Calibration.Pad).ToDictionary(g => g.Key, g => g.Last());
        bool IsInEffect(AdoptedCalibration a) => ReferenceEquals(newest[a.Calibration.Pad], a)
            && here.FirstOrDefault(s => s.Identity!.SerialNumber == a.Calibration.Pad).Calibration is var now && (now is null || now.Identity == a.Calibration.Identity);
        return
        [
            .. here.Where(s => s.Calibration is { IsCalibrated: false }).Select(s => new ShelvedCalibration(s.Calibration!, null, true)),
            .. adopted.Reverse().Select(a => new ShelvedCalibration(a.Calibration, a, IsInEffect(a))),
        ];
    }

    /// <summary>The one of that calibration procedure, or whose identity begins with these digits.</summary>
    /// <exception cref="StepRefusedException">SL-353: none, or more than one.</exception>
    public ShelvedCalibration Find(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        // The number first: it is what people read, and hardly ever as long as the digits of an identity.
        if (long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && All().FirstOrDefault(c => c.Adopted?.Procedure == number) is { } numbered)
            return numbered;
        var found = id.Length < FewestDigits ? [] : All().Where(c => c.Calibration.Identity.StartsWith(id, StringComparison.OrdinalIgnoreCase)).ToList();
        return found.Select(f => f.Calibration.Identity).Distinct().Count() == 1
            ? found[0]
            : throw new StepRefusedException(CalibrationCodes.CalibrationNotFound.Because(id.Length < FewestDigits ? $"no calibration came of procedure {PlainText.Clean(id, 64)}; of an identity at least {FewestDigits} digits are needed" : $"{found.Count} begin with {PlainText.Clean(id, 64)}"));
    }
}
