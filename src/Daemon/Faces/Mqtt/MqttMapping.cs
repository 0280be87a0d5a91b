using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>Puts readings and pads into MQTT payloads.</summary>
internal sealed class MqttMapping(BayConfiguration bay, TargetNow aimedFor, BayClock clock)
{
    private static readonly string Version = typeof(MqttMapping).Assembly.GetName().Version?.ToString(3) ?? "0";

    public MqttLoads Loads(BayReading reading, double maxAgeMs)
    {
        var age = Nanoseconds.ToMilliseconds(clock.NowNs - reading.AtNs);
        return new MqttLoads
        {
            T = Utc(reading.AtNs),
            Seq = reading.Seq,
            StartId = clock.StartId,
            AgeMs = Math.Round(age, 1),
            MaxAgeS = maxAgeMs / 1000,
            Valid = reading.TotalKg is not null && age <= maxAgeMs,
            Verdict = Word(reading.Verdict),
            Remark = reading.Remark,
            Corners = reading.Corners.ToDictionary(c => c.Corner.ToString(), Corner),
            TotalKg = MqttValue.Of(reading.TotalKg),
            CrossWeightPercent = MqttValue.Of(reading.CrossWeightPercent),
            FrontWeightPercent = MqttValue.Of(reading.FrontWeightPercent),
            LeftSideWeightPercent = MqttValue.Of(reading.LeftSideWeightPercent),
            FrontLeftRightDifferenceKg = MqttValue.Of(reading.FrontLeftRightDifferenceKg),
            RearLeftRightDifferenceKg = MqttValue.Of(reading.RearLeftRightDifferenceKg),
        };
    }

    public MqttState Online() => new("online", Utc(clock.NowNs), clock.StartId, Version, null);

    public MqttState Stopping() => new("offline", Utc(clock.NowNs), clock.StartId, null, "stopped");

    /// <summary>Kept by the broker until the connection breaks, so it cannot say when.</summary>
    public MqttState Will() => new("offline", null, clock.StartId, null, "lost");

    public MqttConfig Config() => new()
    {
        T = Utc(clock.NowNs),
        Bay = bay.Bay,
        Corners = [.. bay.Pads.Select(p => p.Corner).Order().Select(c => c.ToString())],
        SettledToleranceKg = bay.Weigh.SettledToleranceKg,
        LoadsRateHz = bay.Mqtt.RateHz,
        CrossWeightFormula = "100 * (RF + LR) / total",
        TargetCrossWeightPercent = aimedFor.Band?.Centre,
        TargetTolerancePercent = aimedFor.Band?.Tolerance,
    };

    public MqttPad Pad(PadSnapshot pad) => new()
    {
        T = Utc(clock.NowNs),
        StartId = clock.StartId,
        Corner = pad.Corner.ToString(),
        State = Word(pad.State),
        SerialNumber = pad.Identity?.SerialNumber,
        Firmware = pad.Identity?.Firmware,
        RateHz = pad.Identity?.RateHz,
        ZeroedAt = pad.Zero is { } zero ? Utc(zero.TakenAt) : null,
        Calibrated = pad.Calibration?.IsCalibrated == true,
        Faults = [.. pad.Faults.Select(f => new MqttDiagnostic(f.Code.Text, f.Message, f.Remedy, f.SinceNs is { } since ? Utc(since) : null))],
    };

    private static MqttCorner Corner(CornerReading corner) => new(
        corner.LoadKg is { } load ? Math.Round(load.Estimate, 3) : null,
        corner.LoadKg?.StandardUncertainty is { } u ? Math.Round(u, 4) : null,
        corner.Calibrated,
        corner.Calibration.Length > 0 ? corner.Calibration : null,
        corner.Faults.Count > 0 ? [.. corner.Faults.Select(f => f.Code.Text)] : null);

    private string Utc(long ns) => Utc(clock.ToUtc(ns));

    /// <summary>UTC as every payload writes it.</summary>
    public static string Utc(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ");

    /// <summary>Words in a public payload are lower case and part of the contract: the schemas list them.</summary>
    public static string Word<T>(T value) where T : struct, Enum => value.ToString().ToLowerInvariant();
}
