namespace ScaleLink.Board.Cars;

/// <summary>What has been answered of a car that is being described, as it was typed; it stays while other views are looked at.</summary>
internal sealed class CarDraft
{
    public Dictionary<string, string> Answers { get; } = [];
}
