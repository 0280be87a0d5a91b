using System.Text.Json;
using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>Values of the trade in a document: stated numbers, four corners, places.</summary>
static class BlockValues
{
    const string Form = """{ "value": 220, "u": 10 } or { "value": 220, "u_percent": 5 } (one standard uncertainty), { "guess": 220, "u": 60 }, or "unknown" """;

    /// <summary>A stated number; <paramref name="unknown"/> where the document says that nobody knows it.</summary>
    public static Stated? Stated(this JsonBlock block, string key, Stated? unknown = null)
    {
        if (block.Raw(key) is not { } raw)
            return null;
        if (raw.ValueKind == JsonValueKind.String && raw.GetString() == "unknown" && unknown is not null)
            return unknown;
        if (raw.ValueKind != JsonValueKind.Object)
        {
            var remedy = raw.ValueKind == JsonValueKind.Number ? $"State its uncertainty: {Form.Trim().Replace("220", raw.GetRawText())}." : $"Write {Form.Trim()}.";
            block.Note(CarCodes.Uncertainty, key, $"{block.At(key)} states no uncertainty.", remedy);
            return null;
        }

        var inner = block.Block(key)!;
        var (value, guess, u, percent) = (inner.Number("value"), inner.Number("guess"), inner.Number("u"), inner.Number("u_percent"));
        inner.Finish();
        if (value is null == guess is null || u is null == percent is null)
        {
            block.Note(CarCodes.WrongKind, key, $"{block.At(key)} needs one of value and guess, and one of u and u_percent.", $"Write {Form.Trim()}.");
            return null;
        }

        var number = (value ?? guess)!.Value;
        return new(number, u ?? Math.Abs(number) * percent!.Value / 100, assumed: guess is not null);
    }

    /// <summary>A length in mm: a number, or a text with its unit such as "0.5 in".</summary>
    public static double? Length(this JsonBlock block, string key)
    {
        if (block.Raw(key) is not { ValueKind: JsonValueKind.String } raw)
            return block.Number(key);
        if (WrittenUnit.Read("mm", raw.GetString()!) is { } mm)
            return mm;
        block.Note(CarCodes.WrongKind, key, $"{block.At(key)} is no length.", $"Write a number in mm, or a text with its unit: {WrittenUnit.Known("mm")}, with a point for decimals.");
        return null;
    }

    /// <summary>Four numbers under LF, RF, LR and RR, all or none.</summary>
    public static Corners? Four(this JsonBlock block, string key)
    {
        if (block.Block(key) is not { } four)
            return null;
        var (lf, rf, lr, rr) = (four.Number("LF"), four.Number("RF"), four.Number("LR"), four.Number("RR"));
        foreach (var corner in Corners.All.ToArray().Where(c => !four.Has($"{c}")))
            four.Missing($"{corner}", "0");
        four.Finish();
        return lf is { } a && rf is { } b && lr is { } c && rr is { } d ? new(a, b, c, d) : null;
    }

    /// <summary>Three coordinates beside each other in the block.</summary>
    public static Place Place(this JsonBlock block)
    {
        if (!block.Has("behind_front_axle_mm"))
            block.Missing("behind_front_axle_mm", "0");
        if (!block.Has("left_of_centre_mm"))
            block.Missing("left_of_centre_mm", "0");
        return new(block.Number("behind_front_axle_mm") ?? 0, block.Number("left_of_centre_mm") ?? 0, block.Number("height_mm") ?? 0);
    }
}
