using ScaleLink.Daemon.Contract;
using ScaleLink.Probing.Recognition;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Setup;

/// <summary>How far the setting up is, in the words of the public API.</summary>
internal static class SetupMapping
{
    public static Wire.SetupState ToWire(SetupProgress progress, string bayFile)
    {
        var state = new Wire.SetupState
        {
            Stage = progress.Stage switch
            {
                SetupStage.Searching => Wire.SetupStage.Searching,
                SetupStage.Placing => Wire.SetupStage.Placing,
                SetupStage.Written => Wire.SetupStage.Written,
                _ => Wire.SetupStage.Waiting,
            },
            BayFile = bayFile,
            Awaiting = progress.Awaiting?.ToWire() ?? Wire.Corner.Unspecified,
            Note = progress.Note?.ToWire(),
        };
        state.Ports.AddRange(progress.Ports.Select(p => new Wire.SearchedPort { Port = p.Port, Doing = p.Doing, Result = p.Result, Trouble = p.Trouble?.ToWire() }));
        state.Devices.AddRange(progress.Devices.Select(ToWire));
        return state;
    }

    private static Wire.FoundDevice ToWire(SetupDevice device) => new()
    {
        Id = device.Id,
        Link = device.Finding.Link,
        Protocol = device.Found.Protocol,
        Summary = device.Found.Summary,
        Corner = device.Corner?.ToWire() ?? Wire.Corner.Unspecified,
        KnowsCapacity = device.KnowsCapacity,
        Cells = (uint)(device.Found is FoundPadFrames { Cells: { } cells } ? cells : device.Cells.Count),
        Loaded = device.LoadedSince is not null,
        Ready = device.IsReady,
        Silence = device.Silence?.ToWire(),
        Remarks = { device.Found.Remarks },
    };
}
