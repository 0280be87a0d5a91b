namespace ScaleLink.Probing.Listening;

/// <summary>Finds the numbers in what a device sends by itself.</summary>
internal interface ISpokenNumbers
{
    /// <summary>The numbers of each message that these bytes complete.</summary>
    IReadOnlyList<IReadOnlyList<double>> Take(byte[] bytes);
}
