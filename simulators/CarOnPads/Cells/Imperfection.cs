namespace CarOnPads.Cells;

/// <summary>What real cars, cells, converters and adapters do and ideal ones do not. Each is switched on by its own name.</summary>
enum Imperfection
{
    /// <summary><c>friction</c>: seals, bushes and joints hold the suspension where it stops.</summary>
    Friction,
    /// <summary><c>scrub</c>: tyres grip the pads sideways until they roll.</summary>
    Scrub,
    /// <summary><c>run-out</c>: tyres are not quite round; each rolling leaves another radius down.</summary>
    RunOut,
    /// <summary><c>position</c>: wheels and masses do not stand in the middle of the pad.</summary>
    Position,
    /// <summary><c>dead-load</c>: the platform's own weight is in the counts.</summary>
    DeadLoad,
    /// <summary><c>offset</c>: each bridge has an output of its own at no load.</summary>
    Offset,
    /// <summary><c>unequal-cells</c>: the four cells of a pad differ in sensitivity.</summary>
    UnequalCells,
    /// <summary><c>span</c>: the pad as a whole is more or less sensitive than nominal.</summary>
    Span,
    /// <summary><c>noise</c>: white noise of bridge and converter.</summary>
    Noise,
    /// <summary><c>quantisation</c>: a coarse converter.</summary>
    Quantisation,
    /// <summary><c>creep</c>: the output goes on changing under a constant load.</summary>
    Creep,
    /// <summary><c>hysteresis</c>: the output differs on the way up and down.</summary>
    Hysteresis,
    /// <summary><c>non-linearity</c>: the output bows between zero and capacity.</summary>
    NonLinearity,
    /// <summary><c>temperature</c>: zero and span follow the temperature.</summary>
    Temperature,
    /// <summary><c>hum</c>: mains pick-up.</summary>
    Hum,
    /// <summary><c>tilt-noise</c>: the inclinometer trembles.</summary>
    TiltNoise,
    /// <summary><c>tilt-offset</c>: the inclinometer is not mounted true.</summary>
    TiltOffset,
    /// <summary><c>seating</c>: a pad that is lifted and put down again lies a hair otherwise.</summary>
    Seating,
    /// <summary><c>thermometer-noise</c>: the thermometer trembles.</summary>
    ThermometerNoise,
    /// <summary><c>clock-offset</c>: the pads were switched on at different times.</summary>
    ClockOffset,
    /// <summary><c>clock-drift</c>: the pads' crystals run fast or slow.</summary>
    ClockDrift,
    /// <summary><c>latency-batches</c>: the adapter releases bytes in bursts, up to 16 ms late.</summary>
    LatencyBatches,
}
