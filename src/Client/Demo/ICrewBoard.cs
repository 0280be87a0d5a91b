using ScaleLink.Api.V1;

namespace ScaleLink.Client.Demo;

/// <summary>Where the demo's crew writes what it is doing.</summary>
internal interface ICrewBoard
{
    /// <summary>The present action in words.</summary>
    void Say(string doing);

    /// <summary>The next settled reading belongs to this adjustment.</summary>
    void Announce(string label, double? predictedPercent);

    /// <summary>A settled reading on which the crew decides.</summary>
    void Read(Loads reading);
}
