using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Zeros;
using Tomlyn.Syntax;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads a bay file (TOML). Gives the configuration, or every mistake in it.</summary>
internal sealed class BayFile
{
    private static readonly Dictionary<string, BrokerKind> BrokerNames = new()
    {
        ["off"] = BrokerKind.Off,
        ["embedded"] = BrokerKind.Embedded,
        ["external"] = BrokerKind.External,
    };

    private readonly List<Diagnostic> _mistakes = [];

    private BayFile(string path) => Path = path;

    /// <summary>The file that was read.</summary>
    public string Path { get; }

    /// <summary>What is wrong with it. Empty: <see cref="Configuration"/> may be used as it is.</summary>
    public IReadOnlyList<Diagnostic> Mistakes => _mistakes;

    /// <summary>What it says; absent when it cannot be read at all. Not to be used while there are <see cref="Mistakes"/> that matter.</summary>
    public BayConfiguration? Configuration { get; private set; }

    /// <summary>Reads the file at <paramref name="path"/>. Never throws for what is in the file.</summary>
    public static BayFile Load(string path)
    {
        try
        {
            return BoundedText.Read(path, BayFileBounds.LargestBytes) is { } text ? Parse(text, path) : Unread(path, BayFileBounds.TooLarge);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Unread(path, FileMistake.At(0, ConfigurationCodes.FileUnreadable, $"The bay file cannot be read: {e.Message}", "Give its path with --bay FILE."));
        }
    }

    /// <summary>A file that was not read, and why.</summary>
    public static BayFile Unread(string path, Diagnostic why)
    {
        var file = new BayFile(path);
        file._mistakes.Add(why);
        return file;
    }

    /// <summary>Reads the text of a bay file; <paramref name="path"/> only names it.</summary>
    public static BayFile Parse(string text, string path)
    {
        if (BayFileBounds.Parse(text, path) is not { } document)
            return Unread(path, BayFileBounds.TooDeep);
        var file = new BayFile(path);
        foreach (var problem in document.Diagnostics)
            file._mistakes.Add(FileMistake.At(problem.Span.Start.Line + 1, ConfigurationCodes.NotToml, problem.Message, "Correct the TOML syntax."));
        if (document.HasErrors)
            return file;
        if (BayFileBounds.TooMuch(document) is { } tooMuch)
            return Unread(path, tooMuch);
        var configuration = file.Read(document);
        file._mistakes.AddRange(BayCheck.Find(configuration));
        file._mistakes.Sort((a, b) => (a.Line ?? 0).CompareTo(b.Line ?? 0));
        file.Configuration = configuration;
        return file;
    }

    private BayConfiguration Read(DocumentSyntax document)
    {
        var root = new TomlBlock("", 1, document.KeyValues, _mistakes);
        var tables = new TomlTables(document, _mistakes);
        var car = tables.One("car");
        var configuration = new BayConfiguration
        {
            Bay = root.RequiredText("bay"),
            Listen = ReadListen(tables.One("listen")),
            Mqtt = ReadMqtt(tables.One("mqtt")),
            Target = ReadTarget(tables.One("target")),
            Weigh = ReadWeigh(tables.One("weigh")),
            Car = ReadCar(car),
            CarFile = CarFileReader.Read(car, Path),
            Place = PlaceReader.Read(tables.One("place"), root.Text("bay") ?? ""),
            ZeroTracking = ReadZero(tables.One("zero")),
            LedgerPath = ReadLedger(tables.One("ledger")),
            Recorder = ReadRecorder(tables.One("recorder")),
            Pads = [.. tables.Many("pads").Select(pad => PadReader.Read(pad, tables))],
        };
        car.Finish();
        root.Finish();
        tables.Finish();
        return configuration;
    }

    private static ListenConfiguration ReadListen(TomlBlock block)
    {
        var listen = new ListenConfiguration(
            block.Text("address") ?? ListenConfiguration.Usual.Address,
            block.Whole("page_port", 0, 65535) ?? ListenConfiguration.Usual.PagePort,
            block.Whole("grpc_port", 0, 65535) ?? ListenConfiguration.Usual.GrpcPort)
        {
            OtherMachines = block.Flag("other_machines") ?? false,
            Names = (block.Text("names") ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
        };
        block.Finish();
        return listen;
    }

    private MqttConfiguration ReadMqtt(TomlBlock block)
    {
        var mqtt = new MqttConfiguration(
            block.Choice("broker", BrokerNames) ?? BrokerKind.Embedded,
            block.Text("host") ?? "127.0.0.1",
            block.Whole("port", 0, 65535) ?? 1883,
            block.Number("rate_hz", 0.1, 20) ?? 10,
            block.Text("user"),
            PasswordFile.Find(block, Path));
        block.Finish();
        return mqtt;
    }

    private static TargetConfiguration? ReadTarget(TomlBlock block)
    {
        var cross = block.Number("cross_weight_percent", 30, 70);
        var tolerance = block.Number("tolerance_percent", 0.01, 5) ?? CarTargets.UsualTolerancePercent;
        block.Finish();
        return cross is { } percent ? new TargetConfiguration(percent, tolerance) : null;
    }

    private static WeighConfiguration ReadWeigh(TomlBlock block)
    {
        var weigh = new WeighConfiguration(
            block.Number("settled_tolerance_kg", 0.02, 5) ?? 0.1,
            block.Number("raised_below_kg", 0.5, 100) ?? 10);
        block.Finish();
        return weigh;
    }

    private static CarConfiguration? ReadCar(TomlBlock block)
    {
        string[] needed = ["front_track_mm", "rear_track_mm", "front_ride_rate_n_per_mm", "rear_ride_rate_n_per_mm"];
        var (tracks, rates) = ((block.Number(needed[0], 500, 3000), block.Number(needed[1], 500, 3000)), (block.Number(needed[2], 1, 1000), block.Number(needed[3], 1, 1000)));
        var uncertainty = block.Number("ride_rate_uncertainty_percent", 0.1, 100) ?? 15;
        if (!needed.Any(block.Has))
            return null;
        foreach (var missing in needed.Where(key => !block.Has(key)))
            block.Note(ConfigurationCodes.KeyMissing, block.Line, $"car.{missing} is missing.", "Give both tracks and both ride rates, or none of them.");
        return (tracks, rates) is (({ } front, { } rear), ({ } frontRate, { } rearRate))
            ? new CarConfiguration(front, rear, frontRate, rearRate, uncertainty)
            : null;
    }

    private static ZeroTrackingOptions ReadZero(TomlBlock block)
    {
        var usual = new ZeroTrackingOptions();
        var zero = usual with { Enabled = block.Flag("tracking") ?? false, IntervalKg = block.Number("interval_kg", 0.01, 1) ?? usual.IntervalKg };
        block.Finish();
        return zero;
    }

    private static string ReadLedger(TomlBlock block)
    {
        var path = block.Text("path") ?? "scalelink-ledger.db";
        block.Finish();
        return path;
    }

    private static RecorderConfiguration ReadRecorder(TomlBlock block)
    {
        var recorder = new RecorderConfiguration(
            TimeSpan.FromSeconds(block.Number("seconds", 10, 600) ?? 60),
            block.Text("path") ?? "recordings",
            block.Whole("files", 1, 10_000) ?? 20);
        block.Finish();
        return recorder;
    }
}
