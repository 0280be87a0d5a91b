using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary>Has the ports searched, and tells what each one gives.</summary>
internal sealed class DeviceSearch(DaemonConnection daemon, Dialog dialog, Shell shell, string who)
{
    private const int LongestWords = 200;

    /// <summary>Searches until devices are found; false when somebody gives up.</summary>
    public async Task<bool> Run(IReadOnlyList<string> ports, CancellationToken stop)
    {
        var bayFile = (await SetupFeed.Now(daemon, stop))?.BayFile ?? "";
        shell.WriteLine($"The bay file will be {PeerText.Clean(bayFile, LongestWords)}.");
        shell.WriteLine("Ports are listened to; on those where nothing is heard Modbus slaves are asked for. Unplug what is no pad first.");
        while (true)
        {
            var said = await dialog.Ask("Enter searches; names of ports, with blanks between, search these; q leaves.", stop);
            if (said == "q")
                return false;
            IReadOnlyList<string> named = said.Length > 0 ? said.Split(' ', StringSplitOptions.RemoveEmptyEntries) : ports;
            await daemon.Ask(o => daemon.SetupControl.SearchDevicesAsync(new SearchDevicesRequest { Ports = { named }, Who = who }, o), stop);
            if (await Follow(stop))
                return true;
        }
    }

    private async Task<bool> Follow(CancellationToken stop)
    {
        var told = new HashSet<string>();
        await foreach (var state in SetupFeed.Follow(daemon, stop))
        {
            foreach (var port in state.Ports.Where(p => p.Doing.Length == 0 && told.Add(p.Port)))
                shell.WriteLine(shell.Glyphs.Say(PeerText.Clean($"  {port.Port}: {(port.Trouble is { } trouble ? shell.Glyphs.Tell(DiagnosticReader.Read(trouble)) : port.Result)}", LongestWords)));
            if (state.Stage is SetupStage.Waiting or SetupStage.Placing)
            {
                if (state.Note is { } note)
                    shell.WriteLine(shell.Glyphs.Tell(DiagnosticReader.Read(note)));
                else if (state.Devices.Count == 0)
                    shell.WriteLine($"{new Diagnostic(SetupCodes.NothingFound, $"{SetupCodes.NothingFound.Meaning}.", SetupCodes.NothingFound.Remedy)}");
                return state.Devices.Count > 0;
            }
        }

        return false;
    }
}
