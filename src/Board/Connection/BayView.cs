using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace ScaleLink.Board.Connection;

/// <summary>The bay as this page may show it at this instant.</summary>
/// <param name="Loads">The newest loads.</param>
/// <param name="Pads">The newest list of pads.</param>
/// <param name="WorkSessions">The session in the bay, or that there is none.</param>
/// <param name="Trouble">What keeps new messages away, if anything does.</param>
public sealed record BayView(Judged<Loads> Loads, Judged<ListPadsResponse> Pads, Judged<GetSessionResponse> WorkSessions, Diagnostic? Trouble)
{
    /// <summary>The session in the bay; absent when none is open, or none is known.</summary>
    public Session? Session => WorkSessions.Message?.Session;

    /// <summary>Whether other machines are let in; absent before the daemon has told.</summary>
    public bool? IsOpenToOthers => Pads.Message?.Serving?.OtherMachines;

    /// <summary>Name of the bay; empty before it is known.</summary>
    public string Bay => Pads.Message?.Bay ?? Loads.Message?.Bay ?? "";
}
