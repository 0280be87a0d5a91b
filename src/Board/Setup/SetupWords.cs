using ScaleLink.Api.V1;

namespace ScaleLink.Board.Setup;

/// <summary>What the guide says.</summary>
internal static class SetupWords
{
    public static string Stage(SetupState state) => state.Stage switch
    {
        SetupStage.Waiting => "waiting",
        SetupStage.Searching => "searching",
        SetupStage.Placing => "placing",
        SetupStage.Written => "written",
        _ => "",
    };

    /// <summary>What to do now.</summary>
    public static string Guide(SetupState state) => state.Stage switch
    {
        SetupStage.Searching => "The ports are being searched. Nobody on the pads.",
        SetupStage.Written => "The bay file is written; the bay begins.",
        SetupStage.Placing when state.Devices.FirstOrDefault(d => d.Loaded && d.Corner == Corner.Unspecified) is not null => "You are seen. Now step off.",
        SetupStage.Placing when state.Awaiting != Corner.Unspecified => $"Step on the {Place(state.Awaiting)} pad ({state.Awaiting.Name()}) until it is seen, then off.",
        SetupStage.Placing when WireCorners.All.All(c => At(state, c) is not null) => "Every corner has its pad. Name the bay and have its file written.",
        SetupStage.Placing when state.Devices.Count > 0 => "Nobody on the pads for a moment: they are listened to.",
        _ => "Plug in the adapters of the pads, then search.",
    };

    /// <summary>The corner in words, from the driver's seat.</summary>
    public static string Place(Corner corner) => corner switch
    {
        Corner.Lf => "left front",
        Corner.Rf => "right front",
        Corner.Lr => "left rear",
        Corner.Rr => "right rear",
        _ => "",
    };

    /// <summary>The device of a corner.</summary>
    public static FoundDevice? At(SetupState state, Corner corner) => state.Devices.FirstOrDefault(d => d.Corner == corner);

    /// <summary>A device by what tells it from the others.</summary>
    public static string Name(FoundDevice device) => device.Id.StartsWith(device.Link, StringComparison.Ordinal) ? device.Id : $"{device.Id} at {device.Link}";
}
