using ScaleLink.Api.V1;

namespace ScaleLink.Client.Demo;

/// <summary>Where the demo's crew writes what it is doing.</summary>
internal interface ICrewBoard
{
    /// <summary>The present action in words.</summary>
    void Say(string doing);

    /// <summary>An adjustment begins: its label, and what it should give where that can be told.</summary>
    void Announce(string label, double? predictedPercent);

    /// <summary>The adjustment is made and the car left alone: what settles now belongs to it.</summary>
    void HandsOff();

    /// <summary>A settled reading on which the crew decides.</summary>
    void Read(Loads reading);
}
