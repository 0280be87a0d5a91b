namespace ScaleLink.Board.Operating;

/// <summary>This page has just set the bay up: what a new bay still lacks has a way to it on the live view, until it is there.</summary>
internal sealed class FirstRun
{
    public bool LacksCar { get; set; }
}
