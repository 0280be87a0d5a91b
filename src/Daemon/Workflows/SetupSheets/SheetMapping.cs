using ScaleLink.Daemon.Contract;
using ScaleLink.Weighing.SetupSheets;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>Setup sheets in the words of the public API.</summary>
internal static class SheetMapping
{
    public static Wire.SetupSheet Sheet(SheetVersion sheet, SheetsState all, bool withValues)
    {
        var wire = new Wire.SetupSheet
        {
            Key = new() { Car = sheet.Key.Car, Track = sheet.Key.Track, Driver = sheet.Key.Driver },
            Version = (uint)sheet.Version,
            SavedAt = sheet.At.ToWire(),
            Who = sheet.Who,
            Note = sheet.Note,
            Entry = (ulong)sheet.Entry,
            OnCar = all.OnCar.GetValueOrDefault(sheet.Key.Car)?.Sheet.Entry == sheet.Entry,
            CopiedFrom = sheet.CopiedFrom,
            Newest = all.Newest(sheet.Key)?.Entry == sheet.Entry,
        };
        if (withValues)
            wire.Values.AddRange(sheet.Content.Values.Select(v => Value(v.Key, v.Value)));
        return wire;
    }

    public static Wire.SheetComparison Comparison(SheetVersion first, SheetVersion second, SheetsState all)
    {
        var wire = new Wire.SheetComparison { First = Sheet(first, all, withValues: false), Second = Sheet(second, all, withValues: false) };
        wire.Differences.AddRange(SheetDifference.Of(first.Content, second.Content).Select(d => new Wire.SheetDifference
        {
            Slot = d.Slot.ToString(), Words = d.Slot.Words, Group = Group(d.Slot),
            First = d.Before is { } before ? Value(d.Slot, before) : null,
            Second = d.After is { } after ? Value(d.Slot, after) : null,
        }));
        return wire;
    }

    public static Wire.SheetNow Now(string car, SheetNow now, SheetsState all)
    {
        var wire = new Wire.SheetNow
        {
            Car = car,
            Sheet = now.Fitted is { } fitted ? Sheet(fitted.Sheet, all, withValues: true) : null,
            TurnsSince = now.TurnsSince.ToWire(),
            HasTurns = now.TurnsSince != default,
            PerchTurns = now.PerchTurns?.ToWire(),
            RideHeightsMm = now.HeightsMm?.ToWire(),
        };
        wire.Remarks.AddRange(now.Remarks.Select(r => new Wire.SheetRemark { Words = r.ToString(), TypedWords = Wire.Sentence.Of(r) }));
        return wire;
    }

    public static Wire.SheetField Field(SheetField field) => new()
    {
        Key = field.Key,
        Group = field.Group,
        Words = field.Words,
        Scope = field.Scope switch
        {
            SheetScope.WholeCar => Wire.SheetScope.Car,
            SheetScope.EachAxle => Wire.SheetScope.Axle,
            SheetScope.EachCorner => Wire.SheetScope.Corner,
            SheetScope.Named => Wire.SheetScope.Named,
            _ => Wire.SheetScope.Unspecified,
        },
        IsText = field.Unit is null,
        Unit = field.Unit?.Sign ?? "",
        Low = field.Low,
        High = field.High,
        MovesWithPerches = field.MovesWithPerches,
    };

    private static Wire.SheetValue Value(SheetSlot slot, SheetValue value)
    {
        var wire = new Wire.SheetValue { Slot = slot.ToString(), Words = slot.Words, Group = Group(slot), Unit = slot.Field?.Unit?.Sign ?? "", MovesWithPerches = slot.Field?.MovesWithPerches ?? false };
        if (value.Number is { } number)
            wire.Number = number;
        else
            wire.Text = value.Text ?? "";
        return wire;
    }

    private static string Group(SheetSlot slot) => slot.Field?.Group ?? slot.Key.Split('.')[0];
}
