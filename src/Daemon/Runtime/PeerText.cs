namespace ScaleLink.Daemon.Runtime;

/// <summary>Cleans text from outside before it reaches a log, a ledger or a terminal.</summary>
internal static class PeerText
{
    /// <summary>Printable characters only, at most <paramref name="most"/> of them, without space at the ends.</summary>
    public static string Clean(string text, int most)
    {
        var printable = new string([.. text.Where(c => !char.IsControl(c) && !char.IsSurrogate(c))]).Trim();
        return printable.Length <= most ? printable : printable[..most];
    }
}
