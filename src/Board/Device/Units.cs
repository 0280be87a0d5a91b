namespace ScaleLink.Board.Device;

/// <summary>What a device shows loads and lengths in. Handed down to every part of the page, so that sentences need not be told.</summary>
public sealed record Units(Unit Mass, Unit Length)
{
    /// <summary>Of a device that says them by their signs; kg and mm for what it does not say.</summary>
    public static Units Named(string? mass, string? length) => new(Unit.Named(mass, Unit.Kilogram, Unit.Pound), Unit.Named(length, Unit.Millimetre, Unit.Inch));
}
