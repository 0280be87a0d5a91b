using ScaleLink.Daemon.Links;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// What turns the counts of one pad into kilograms in service: calibration, zero, tracking, gravity. Allocates nothing for
/// a sample. Not thread-safe: its pad guards it.
/// </summary>
internal sealed class PadScale(Place here)
{
    private double[] _trim = [];
    private double _gravity = 1;
    private double? _zeroCounts;

    /// <summary>In effect; absent before one is known.</summary>
    public PadCalibration? Calibration { get; private set; }

    /// <summary>In effect; absent before one is known, and when it does not fit the cells.</summary>
    public ZeroPoint? Zero { get; private set; }

    /// <summary>What zero tracking has taken off since the zero, kg.</summary>
    public ZeroTrack Track { get; set; }

    /// <summary>What the zero takes off, kg.</summary>
    public double? ZeroKg => _zeroCounts is { } zero && Calibration is { } c ? -c.Kg(zero) * _gravity - Track.SumKg : null;

    /// <summary>Puts a calibration into effect; the zero is added up anew with its trims.</summary>
    public void Use(PadCalibration? calibration)
    {
        Calibration = calibration;
        _trim = [.. calibration?.CellTrim ?? []];
        _gravity = calibration?.Place.CarriedTo(here).Factor ?? 1;
        Use(Zero);
    }

    /// <summary>Puts a zero into effect; tracking begins anew.</summary>
    public void Use(ZeroPoint? zero)
    {
        _zeroCounts = Calibration is { } c ? zero?.Trimmed(c) : zero?.Counts;
        Zero = _zeroCounts is null ? null : zero;
        Track = default;
    }

    /// <summary>The pad is gone: another one may come.</summary>
    public void Forget()
    {
        Use((ZeroPoint?)null);
        Use((PadCalibration?)null);
    }

    /// <summary>Counts of the cells, trimmed and added up.</summary>
    public double Counts(in CellCounts cells, int count)
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
            sum += (i < _trim.Length ? _trim[i] : 1) * cells[i];
        return sum;
    }

    /// <summary>The load, kg; absent without calibration or zero.</summary>
    public double? Kg(double? counts) =>
        counts - _zeroCounts is { } above && Calibration is { } c ? c.Kg(above) * _gravity - Track.SumKg : null;

    /// <summary>The uncertainty about a load; none without a calibration.</summary>
    public CalibrationUncertainty Uncertainty(double kg, double? temperatureC) =>
        Calibration is { } c ? CalibrationUncertainty.Of(c, kg, new UseConditions(here, temperatureC)) : default;

    /// <summary>Mean load of some samples and its standard uncertainty by repeatability and calibration, kg.</summary>
    public (double? Kg, double? StandardUncertaintyKg) MeanOf(double[] counts, double? temperatureC)
    {
        if (counts.Length < 2 || Kg(counts.Average()) is not { } load)
            return (null, null);
        var mean = counts.Average();
        var variance = counts.Sum(c => (c - mean) * (c - mean)) / (counts.Length - 1);
        var noise = Calibration!.SpanKgPerCount * Math.Sqrt(variance / counts.Length);
        return (load, double.Hypot(noise, Uncertainty(load, temperatureC).Kg));
    }
}
