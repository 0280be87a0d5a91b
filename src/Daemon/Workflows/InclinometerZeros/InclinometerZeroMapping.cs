using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Weighing.InclinometerZeros;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>The zeros of inclinometers in the words of the public API.</summary>
internal sealed class InclinometerZeroMapping(InclinometerZeroDesk desk, LiveBay bay)
{
    // Common practice, no published source.
    private static readonly string[] Cautions =
    [
        "The car is off the pads, on axle stands on firm ground, wheels chocked; nobody under a car on a jack.",
        "Lift a heavy pad with two people, knees bent; fingers out from under its edges when it comes down.",
    ];

    private static readonly string[] CannotSee =
    [
        "whether a pad was turned by half a turn or by some other angle each time: mark its edges on the floor",
        "a zero that changes later, with temperature, by a knock, or by a sensor that works loose: test again then",
        "how high a pad stands: heights come from a height measurement",
    ];

    public Wire.ListInclinometerZerosResponse All()
    {
        var list = new Wire.ListInclinometerZerosResponse { UntestedUncertaintyDeg = InclinometerZero.UntestedDeg };
        list.Pads.AddRange(bay.Pads.Select(Pad));
        list.Cautions.AddRange(Cautions);
        list.CannotSee.AddRange(CannotSee);
        return list;
    }

    public Wire.PadInclinometerZero Pad(PadChannel pad)
    {
        var standing = desk.At(pad);
        var test = standing?.Test?.Test ?? new InclinometerTest();
        var result = new Wire.PadInclinometerZero
        {
            Corner = pad.Corner.ToWire(),
            SerialNumber = standing?.SerialNumber ?? "",
            Zero = standing?.Zero is { } zero ? Zero(zero) : null,
            NextNumber = (uint)test.NextNumber,
            NextTurned = test.NextIsTurned,
            ReadingsNeeded = InclinometerTest.Needed,
            CutShort = standing?.CutShort ?? "",
        };
        result.Readings.AddRange(test.Readings.Select(Reading));
        return result;
    }

    public static Wire.InclinometerZero Zero(SavedInclinometerZero saved)
    {
        var zero = saved.Zero;
        var result = new Wire.InclinometerZero
        {
            PitchDeg = new Wire.MeasuredValue { Estimate = zero.PitchDeg, StandardUncertainty = zero.StandardUncertaintyDeg },
            RollDeg = new Wire.MeasuredValue { Estimate = zero.RollDeg, StandardUncertainty = zero.StandardUncertaintyDeg },
            GroundPitchDeg = zero.GroundPitchDeg,
            GroundRollDeg = zero.GroundRollDeg,
            TestedAt = saved.At.ToWire(),
            Who = saved.Who,
        };
        if (saved.TemperatureC is { } celsius)
            result.TemperatureC = celsius;
        return result;
    }

    private static Wire.TiltReading Reading(TiltReading reading, int index) => new()
    {
        Number = (uint)index + 1,
        Turned = index % 2 == 1,
        PitchDeg = reading.PitchDeg,
        RollDeg = reading.RollDeg,
        Time = reading.At.ToWire(),
        SaidTurned = reading.SaidTurned,
    };
}
