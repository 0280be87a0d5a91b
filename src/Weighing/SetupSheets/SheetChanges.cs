namespace ScaleLink.Weighing.SetupSheets;

/// <summary>Changes of a setup sheet as somebody typed them.</summary>
/// <param name="Values">By slot; null takes the value out.</param>
/// <param name="Mistakes">All of them.</param>
sealed record SheetChanges(IReadOnlyList<(SheetSlot Slot, SheetValue? Value)> Values, IReadOnlyList<Diagnostic> Mistakes)
{
    /// <summary>Reads names and values; an empty value takes one out.</summary>
    /// <param name="typed">As typed.</param>
    /// <param name="units">Of numbers without a unit.</param>
    public static SheetChanges Read(IEnumerable<(string Slot, string Value)> typed, Units units)
    {
        List<(SheetSlot, SheetValue?)> values = [];
        List<Diagnostic> mistakes = [];
        foreach (var (name, value) in typed)
            try
            {
                foreach (var slot in SheetNaming.Slots(name))
                    values.Add((slot, value.Trim().Length == 0 ? null : SheetTyped.Read(slot, value, units)));
            }
            catch (DiagnosticException e)
            {
                mistakes.AddRange(e.Diagnostics);
            }

        return new(values, mistakes);
    }
}
