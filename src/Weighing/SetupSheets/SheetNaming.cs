namespace ScaleLink.Weighing.SetupSheets;

/// <summary>Which values a name means that somebody typed: one, those of an axle, of a side, or all four.</summary>
static class SheetNaming
{
    const int LongestPlace = 80;

    static readonly Dictionary<string, string[]> Corners = new(StringComparer.OrdinalIgnoreCase)
    {
        ["LF"] = ["LF"], ["RF"] = ["RF"], ["LR"] = ["LR"], ["RR"] = ["RR"],
        ["front"] = ["LF", "RF"], ["rear"] = ["LR", "RR"], ["left"] = ["LF", "LR"], ["right"] = ["RF", "RR"], ["all"] = ["LF", "RF", "LR", "RR"],
    };

    static readonly Dictionary<string, string[]> Axles = new(StringComparer.OrdinalIgnoreCase) { ["front"] = ["front"], ["rear"] = ["rear"], ["all"] = ["front", "rear"] };

    /// <summary>The slots of a name such as "springs.rate.LF", "springs.rate.front" or "fuel.fill".</summary>
    /// <exception cref="DiagnosticException">SL-612: there is no such field, or not at that place.</exception>
    public static IReadOnlyList<SheetSlot> Slots(string name)
    {
        var shown = PlainText.Clean(name, 120);
        if (SheetSlot.Of(name.Trim()) is not { } slot || SheetFields.Find(slot.Key.ToLowerInvariant()) is not { } field)
            throw Unknown(shown, $"A setup sheet has no field {shown}.", SheetFields.Find(name) is null ? Nearest(name) : "Say where as well.");
        IReadOnlyList<string>? places = field.Scope switch
        {
            SheetScope.WholeCar => slot.Place.Length == 0 ? [""] : null,
            SheetScope.EachAxle => Axles.GetValueOrDefault(slot.Place),
            SheetScope.EachCorner => Corners.GetValueOrDefault(slot.Place),
            _ => slot.Place.Length > 0 && PlainText.IsClean(slot.Place, LongestPlace) ? [slot.Place.Trim()] : null,
        };
        return places is null ? throw Unknown(shown, $"{shown} names no place of {field.Key}.", Where(field)) : [.. places.Select(p => new SheetSlot(field.Key, p))];
    }

    static Sentence Where(SheetField field) => field.Scope switch
    {
        SheetScope.WholeCar => $"It has one value for the car: write {field.Key}.",
        SheetScope.EachAxle => $"Write {field.Key}.front, {field.Key}.rear or {field.Key}.all.",
        SheetScope.EachCorner => $"Write {field.Key}.LF, RF, LR or RR; front, rear, left, right or all mean several.",
        _ => $"Write {field.Key}. and the name of the place, of at most {LongestPlace} signs.",
    };

    static Sentence Nearest(string name)
    {
        var group = SheetFields.All.Where(f => string.Equals(f.Group, name.Split('.')[0], StringComparison.OrdinalIgnoreCase)).Select(f => f.Key).ToList();
        return group.Count > 0 ? $"Known there: {string.Join(", ", group)}." : $"Its parts are {string.Join(", ", SheetFields.All.Select(f => f.Group).Distinct())}.";
    }

    static DiagnosticException Unknown(string where, Sentence message, Sentence remedy) => new(new Diagnostic(SheetCodes.UnknownField, message, remedy) { Where = where });
}
