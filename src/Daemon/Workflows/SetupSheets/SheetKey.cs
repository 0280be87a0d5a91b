namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>Names a setup sheet. Capitals do not tell two tracks or drivers apart: nobody means two by them.</summary>
/// <param name="Car">As its file calls it.</param>
/// <param name="Track">Empty: of no track.</param>
/// <param name="Driver">Empty: of no driver.</param>
internal sealed record SheetKey(string Car, string Track, string Driver)
{
    private const int Longest = 80;

    /// <summary>For people.</summary>
    public string Words => string.Join(", ", new[] { Car, Track, Driver }.Where(n => n.Length > 0));

    /// <summary>The names as they are kept.</summary>
    /// <exception cref="DiagnosticException">SL-616.</exception>
    public static SheetKey Of(string car, string track, string driver)
    {
        foreach (var (what, name) in new[] { ("track", track), ("driver", driver) })
            if (!PlainText.IsClean(name, Longest))
                throw new DiagnosticException(new Diagnostic(SheetCodes.Name, $"The name of the {what} is longer than {Longest} signs or has some that do not show.", "Type it anew.") { Where = what });
        return new(car.Trim(), track.Trim(), driver.Trim());
    }

    public bool Equals(SheetKey? other) => other is not null && Car == other.Car && Same(Track, other.Track) && Same(Driver, other.Driver);

    public override int GetHashCode() => HashCode.Combine(Car, StringComparer.OrdinalIgnoreCase.GetHashCode(Track), StringComparer.OrdinalIgnoreCase.GetHashCode(Driver));

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
