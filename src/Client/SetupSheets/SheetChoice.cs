using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.SetupSheets;

/// <summary>Which setup sheet a command means: what was said, and otherwise the one that is on the car in the bay.</summary>
internal sealed class SheetChoice
{
    private readonly Option<string?> _car = new("--car") { Description = "The car; otherwise the one in the bay.", HelpName = "NAME" };
    private readonly Option<string?> _track = new("--track") { Description = "The track; otherwise that of the sheet that is on the car.", HelpName = "NAME" };
    private readonly Option<string?> _driver = new("--driver") { Description = "The driver; otherwise that of the sheet that is on the car.", HelpName = "NAME" };

    /// <summary>The options, on a command.</summary>
    public SheetChoice(Command command)
    {
        foreach (var option in new[] { _car, _track, _driver })
            command.Options.Add(option);
    }

    /// <summary>The sheet meant. With a track or a driver alone, the other one is that of the sheet on the car.</summary>
    public async Task<SheetKey> Key(ParseResult parsed, DaemonConnection daemon, CancellationToken stop)
    {
        var now = await Now(parsed, daemon, stop);
        var (track, driver) = (parsed.GetValue(_track), parsed.GetValue(_driver));
        if (now.Sheet is { } fitted)
            return new() { Car = now.Car, Track = track ?? fitted.Key.Track, Driver = driver ?? fitted.Key.Driver };
        if (track is null && driver is null && await All(daemon, now.Car, stop) is { Count: > 0 } all)
            return all.Count == 1 ? all[0].Key : throw new ClientException(new Diagnostic(SheetCodes.NotFound,
                $"{PeerText.Clean(now.Car, 40)} has {all.Count} setup sheets, and nobody has said which is on the car.", "Name track and driver: --track and --driver. See which there are: scalelink sheet list."));
        return new() { Car = now.Car, Track = track ?? "", Driver = driver ?? "" };
    }

    /// <summary>What is on the car meant.</summary>
    public Task<SheetNow> Now(ParseResult parsed, DaemonConnection daemon, CancellationToken stop) =>
        daemon.Ask(o => daemon.SetupSheets.GetSheetNowAsync(new GetSheetNowRequest { Car = parsed.GetValue(_car) ?? "" }, o), stop);

    /// <summary>The newest version of a sheet; 0 where there is none yet.</summary>
    public static async Task<uint> Newest(DaemonConnection daemon, SheetKey key, CancellationToken stop) =>
        (await All(daemon, key.Car, stop)).FirstOrDefault(s => Same(s.Key.Track, key.Track) && Same(s.Key.Driver, key.Driver))?.Version ?? 0;

    private static async Task<IReadOnlyList<SetupSheet>> All(DaemonConnection daemon, string car, CancellationToken stop) =>
        (await daemon.Ask(o => daemon.SetupSheets.ListSheetsAsync(new ListSheetsRequest { Car = car }, o), stop)).Sheets;

    private static bool Same(string one, string other) => string.Equals(one, other.Trim(), StringComparison.OrdinalIgnoreCase);
}
