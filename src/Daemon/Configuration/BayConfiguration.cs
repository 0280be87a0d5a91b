using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Everything that the bay file says, checked.</summary>
internal sealed record BayConfiguration
{
    /// <summary>Name of the bay in topics and on screens.</summary>
    public required string Bay { get; init; }

    /// <summary>The pads, one a corner.</summary>
    public required IReadOnlyList<PadConfiguration> Pads { get; init; }

    /// <summary>Where the daemon listens.</summary>
    public required ListenConfiguration Listen { get; init; }

    /// <summary>The broker.</summary>
    public required MqttConfiguration Mqtt { get; init; }

    /// <summary>What the crew is aiming for; absent when the file sets none.</summary>
    public TargetConfiguration? Target { get; init; }

    /// <summary>When a load counts as settled, and as a car at all.</summary>
    public required WeighConfiguration Weigh { get; init; }

    /// <summary>What is known of the car; absent when the file says nothing.</summary>
    public CarConfiguration? Car { get; init; }

    /// <summary>Text of the car file that the bay begins with; absent when the file names none.</summary>
    public string? CarFile { get; init; }

    /// <summary>Where the bay stands, for its gravity.</summary>
    public required Place Place { get; init; }

    /// <summary>How zeros are kept.</summary>
    public required ZeroTrackingOptions ZeroTracking { get; init; }

    /// <summary>Path of the ledger.</summary>
    public required string LedgerPath { get; init; }

    /// <summary>What is kept of the bytes on the links.</summary>
    public required RecorderConfiguration Recorder { get; init; }
}

/// <summary>One pad: where it is, what it speaks, and the calibration it starts with.</summary>
internal sealed record PadConfiguration
{
    /// <summary>The corner it stands under.</summary>
    public required Corner Corner { get; init; }

    /// <summary>Where its loads come from, and its tilt too unless <see cref="Tilt"/> says otherwise.</summary>
    public required SourceConfiguration Source { get; init; }

    /// <summary>Where its tilt comes from when that is somewhere else.</summary>
    public SourceConfiguration? Tilt { get; init; }

    /// <summary>Serial port or <c>tcp://host:port</c> of its loads.</summary>
    public string Link => Source.Link;

    /// <summary>The pad that belongs here; another one is refused. Absent: any.</summary>
    public string? SerialNumber { get; init; }

    /// <summary>Largest load, kg, of a pad that does not say so itself.</summary>
    public double? CapacityKg { get; init; }

    /// <summary>Nominal sensitivity, kg a count. Absent: the pad gives no load until it has been calibrated.</summary>
    public double? KgPerCount { get; init; }

    /// <summary>Relative standard uncertainty of the nominal sensitivity, percent.</summary>
    public required double SpanUncertaintyPercent { get; init; }

    /// <summary>Whether the tilt of the pad is corrected.</summary>
    public required bool CorrectTilt { get; init; }

    /// <summary>Line in the bay file, for messages.</summary>
    public int Line { get; init; }
}

/// <summary>Address and ports of the public faces.</summary>
internal sealed record ListenConfiguration(string Address, int PagePort, int GrpcPort)
{
    /// <summary>Where a bay listens that says nothing else: on this machine alone.</summary>
    public static ListenConfiguration Usual { get; } = new("127.0.0.1", 5480, 5481);

    /// <summary>Whether other machines are let in, on <see cref="Address"/> itself or through a proxy on this machine. There are no rights and no TLS yet.</summary>
    public bool OtherMachines { get; init; }

    /// <summary>Names under which browsers may ask for the page, besides this machine's own <c>localhost</c>.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];
}

/// <summary>Which broker carries the MQTT messages.</summary>
internal enum BrokerKind
{
    /// <summary>None: no MQTT.</summary>
    Off,
    /// <summary>The daemon's own, on loopback.</summary>
    Embedded,
    /// <summary>Another process or machine.</summary>
    External,
}

/// <summary>The broker and the pace of live loads on it.</summary>
internal sealed record MqttConfiguration(BrokerKind Broker, string Host, int Port, double RateHz, string? User, string? PasswordFile);

/// <summary>How far back the tape of each link goes, where weighings of it are written, and how many are kept.</summary>
internal sealed record RecorderConfiguration(TimeSpan Span, string Folder, int Files);

/// <summary>Cross weight aimed for and its tolerance, percent.</summary>
internal sealed record TargetConfiguration(double CrossWeightPercent, double TolerancePercent);

/// <summary>Bands of the weighing, kg.</summary>
internal sealed record WeighConfiguration(double SettledToleranceKg, double RaisedBelowKg);

/// <summary>What the rocking of a car depends on: tracks, mm; ride rates (spring at the wheel in series with the tyre), N/mm, and how well they are known.</summary>
internal sealed record CarConfiguration(double FrontTrackMm, double RearTrackMm, double FrontRideRate, double RearRideRate, double RateUncertaintyPercent);
