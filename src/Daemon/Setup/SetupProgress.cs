using System.Collections.Immutable;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Setup;

/// <summary>How far the setting up is.</summary>
internal enum SetupStage
{
    /// <summary>Nothing was searched yet: whoever asks silent ports for slaves sends bytes, and that is somebody's decision.</summary>
    Waiting,
    Searching,
    Placing,
    Written,
}

/// <summary>A port that is or was searched.</summary>
/// <param name="Port">As it was named.</param>
/// <param name="Doing">What is being done on it; empty: it is searched.</param>
/// <param name="Result">What was found, in words.</param>
/// <param name="Trouble">Why nothing was.</param>
internal sealed record SearchedPort(string Port, string Doing, string Result = "", Diagnostic? Trouble = null);

/// <summary>All that is known while a bay is set up; immutable.</summary>
internal sealed record SetupProgress
{
    public SetupStage Stage { get; init; }
    public ImmutableArray<SearchedPort> Ports { get; init; } = [];
    public ImmutableArray<SetupDevice> Devices { get; init; } = [];

    /// <summary>The corner whose pad is to be stepped on.</summary>
    public Corner? Awaiting { get; init; }

    /// <summary>Corners are being asked for: every device that is heard has been listened to for long enough.</summary>
    public bool HasBegun { get; init; }

    /// <summary>What came between.</summary>
    public Diagnostic? Note { get; init; }

    /// <summary>The first corner without a device, in the order in which people walk round the car; nothing: each has one.</summary>
    public Corner? NextCorner => Enum.GetValues<Corner>().Cast<Corner?>().FirstOrDefault(c => !Devices.Any(d => d.Corner == c));

    /// <summary>Asks for the next corner that has no device.</summary>
    public SetupProgress Next() => this with { Awaiting = Devices.IsEmpty ? null : NextCorner, HasBegun = true, Note = null };

    /// <summary>Asks for the first corner as soon as that makes sense.</summary>
    public SetupProgress Begun() => !HasBegun && Devices.All(d => d.IsReady || d.Silence is not null) ? Next() : this;

    /// <summary>With what one port gave. Two that say the same serial number are told apart by where they are; the bay file refuses them.</summary>
    public SetupProgress Adding(IEnumerable<SetupDevice> devices) =>
        devices.Aggregate(this, (p, device) => p with { Devices = [.. p.Devices, p.Devices.Any(d => d.Id == device.Id) ? device with { Id = $"{device.Id} at {device.Finding.Link}" } : device] });

    /// <summary>With one device changed.</summary>
    public SetupProgress With(string id, Func<SetupDevice, SetupDevice> change) => this with { Devices = [.. Devices.Select(d => d.Id == id ? change(d) : d)] };

    /// <summary>With one port's line changed.</summary>
    public SetupProgress With(SearchedPort port) => this with { Ports = [.. Ports.Select(p => p.Port == port.Port ? port : p)] };

    /// <summary>With a device under a corner, or under none; whatever stood there stands under none then.</summary>
    public SetupProgress Placed(string id, Corner? corner) =>
        this with { Devices = [.. Devices.Select(d => d.Id == id ? d with { Corner = corner } : corner is not null && d.Corner == corner ? d with { Corner = null } : d)] };
}
