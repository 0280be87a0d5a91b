using System.Globalization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary>Gives each corner its device: somebody steps on one pad after the other, or types the device's number.</summary>
internal sealed class CornerGuide(DaemonConnection daemon, Dialog dialog, Shell shell, string who)
{
    private string? _noteTold;
    private Corner _asked;
    private readonly HashSet<string> _loaded = [];
    private readonly Dictionary<string, Corner> _placed = [];

    /// <summary>Runs until every corner has a device.</summary>
    public async Task Run(CancellationToken stop)
    {
        shell.WriteLine("Nobody on the pads for a moment.");
        await foreach (var state in SetupFeed.Follow(daemon, stop))
        {
            Tell(state);
            if (WireCorners.All.All(c => state.Devices.Any(d => d.Corner == c)))
                return;
            if (dialog.Poll() is { } line)
                await Type(line, state, stop);
        }
    }

    private void Tell(SetupState state)
    {
        foreach (var device in state.Devices)
        {
            if (device.Loaded ? _loaded.Add(device.Id) : !_loaded.Remove(device.Id))
                if (device.Loaded)
                    shell.WriteLine($"  {Name(device)} feels you. Now step off.");
            if (device.Corner != Corner.Unspecified && _placed.GetValueOrDefault(device.Id) != device.Corner)
                shell.WriteLine($"  {device.Corner.Name()}: {Name(device)}");
            _placed[device.Id] = device.Corner;
        }

        var note = state.Note is { } told ? shell.Glyphs.Tell(DiagnosticReader.Read(told)) : null;
        if (note is not null && note != _noteTold)
            shell.WriteLine($"  {note}");
        _noteTold = note;
        if (state.Awaiting != _asked && state.Awaiting != Corner.Unspecified)
            Ask(state);
        _asked = state.Awaiting;
    }

    private void Ask(SetupState state)
    {
        if (_asked == Corner.Unspecified)
        {
            shell.WriteLine("Corners as seen from the driver's seat: LF is left front. Hold on to something while you step on a pad.");
            foreach (var (number, device) in state.Devices.Index())
                shell.WriteLine($"  {(number + 1).ToString(CultureInfo.InvariantCulture)}  {Name(device)}");
        }

        shell.WriteLine($"{state.Awaiting.Name()}: step on its pad until it is seen, then off. Or type the device's number and Enter.");
    }

    private async Task Type(string line, SetupState state, CancellationToken stop)
    {
        if (state.Awaiting == Corner.Unspecified || !int.TryParse(line, out var number) || number < 1 || number > state.Devices.Count)
        {
            shell.WriteLine($"  \"{PeerText.Clean(line, 40)}\" is no number of a device.");
            return;
        }

        await daemon.Ask(o => daemon.SetupControl.PlaceDeviceAsync(new PlaceDeviceRequest { Device = state.Devices[number - 1].Id, Corner = state.Awaiting, Who = who }, o), stop);
    }

    private static string Name(FoundDevice device) => PeerText.Clean($"{device.Link}, {device.Protocol}{(device.Id == device.Link ? "" : $", {device.Id}")}", 120);
}
