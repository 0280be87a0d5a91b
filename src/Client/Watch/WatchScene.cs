using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Watch;

/// <summary>Everything that the live picture shows at one instant.</summary>
internal sealed record WatchScene
{
    public required Judged<Loads> Loads { get; init; }
    public Judged<ListPadsResponse>? Pads { get; init; }
    public required StepTrace Trace { get; init; }
    /// <summary>What the crew is doing, where somebody knows.</summary>
    public string? Action { get; init; }
    /// <summary>The digits that its values have had so far.</summary>
    public required SteadyTexts Steady { get; init; }
    /// <summary>The line at the foot.</summary>
    public required string Foot { get; init; }
}
