using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>Takes slope and warp of the patch out of every reading, as far as the crew has switched it on and the limits allow.</summary>
internal sealed class LivePatch(PatchDesk desk, StandingCar standing)
{
    // A correction goes with the total; less than this apart, it is the same correction.
    private const double SameTotal = 0.005;

    private PatchState? _state;
    private CarModel? _car;
    private PatchCorrector? _corrector;
    private double _total;
    private long _refusedSinceNs;

    /// <summary>The reading as it would be on level pads in one plane. Called by the weigher only.</summary>
    public BayReading Correct(BayReading reading)
    {
        var state = desk.State;
        if (state.On.Count == 0 || reading.TotalKg is not { Estimate: > 0 } total || reading.Corners.Any(c => c.LoadKg is null))
            return reading;
        if (state.HeightMeasurement is not { } heightMeasurement || standing.Model is not { } car)
            return CorrectedReading.Mark(reading, state.On, state.HeightMeasurement is null ? "no height measurement of the patch is in effect" : "no car is chosen");
        Prepare(state, heightMeasurement, car, total.Estimate);
        var loads = Corners.From(c => reading.Corners[(int)c].LoadKg!.Value.Estimate);
        var corrected = _corrector!.Correct(loads, off: state.Off);
        if (!corrected.Corrections.Any(c => state.On.Contains(c.Kind) && c.Refusal is not null))
            _refusedSinceNs = 0;
        else if (_refusedSinceNs == 0)
            _refusedSinceNs = reading.AtNs;
        return CorrectedReading.Of(reading, corrected, state.On, _refusedSinceNs);
    }

    private void Prepare(PatchState state, SavedHeightMeasurement heightMeasurement, CarModel car, double total)
    {
        if (_corrector is not null && ReferenceEquals(_state, state) && ReferenceEquals(_car, car) && Math.Abs(total - _total) < SameTotal * _total)
            return;
        (_state, _car, _total) = (state, car, total);
        _corrector = new PatchCorrector(new CarStatics(car, total), heightMeasurement.HeightMeasurement);
    }
}
