using ScaleLink.Daemon.Configuration;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Bay;

/// <summary>What cross weight is aimed for at this moment, percent, on every face: what the open session says, else the car in the bay, else the bay file.</summary>
internal sealed class TargetNow(BayConfiguration bay)
{
    private readonly Lock _gate = new();
    private readonly TargetBand? _ofFile = bay.Target is { } file ? new(file.CrossWeightPercent, file.TolerancePercent) : null;
    private TargetBand? _ofSession, _ofCar;

    /// <summary>Told when it is another one.</summary>
    public event Action? Changed;

    /// <summary>Nothing where nobody says any.</summary>
    public TargetBand? Band
    {
        get
        {
            lock (_gate)
                return _ofSession ?? _ofCar ?? _ofFile;
        }
    }

    /// <summary>As the open session has it; nothing without one.</summary>
    public void OfSession(TargetBand? band) => Set(() => _ofSession = band);

    /// <summary>As the car in the bay has it; nothing without one.</summary>
    public void OfCar(TargetBand? band) => Set(() => _ofCar = band);

    private void Set(Action set)
    {
        TargetBand? before, now;
        lock (_gate)
        {
            before = Band;
            set();
            now = Band;
        }

        if (now != before)
            Changed?.Invoke();
    }
}
