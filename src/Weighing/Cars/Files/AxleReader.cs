using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>What a document says of one axle. Absent parts were missing or wrong, and are noted.</summary>
sealed record AxleSetup(Stated? Track, CornerSetup? Corner, AntiRollBar? Bar);

/// <summary>Reads what both corners of an axle share, and what one corner has of its own.</summary>
static class AxleReader
{
    public static AxleSetup? Read(JsonBlock? axle)
    {
        if (axle is null)
            return null;
        var track = CarReader.Needed(axle, "track_mm");
        var (spring, ratio, tyre) = (
            CarReader.Needed(axle, "spring_rate_n_per_mm", Unknowns.SpringRate),
            CarReader.Needed(axle, "motion_ratio", Unknowns.MotionRatio),
            CarReader.Needed(axle, "tyre_rate_n_per_mm", Unknowns.TyreRate));
        if (!axle.Has("perch"))
            axle.Missing("perch", "{ \"pitch_mm_per_turn\": { \"value\": 2, \"u\": 0 }, \"up_turns_left\": 6, \"down_turns_left\": 6 }, or { \"can_turn\": false }");
        var (perch, bar) = (Perch(axle.Block("perch"), null), Bar(axle.Block("bar")));
        var corner = spring is { } s && ratio is { } r && tyre is { } t && perch is not null
            ? Heights(axle, new CornerSetup { SpringRateNPerMm = s, MotionRatio = r, TyreRateNPerMm = t, Perch = perch })
            : null;
        axle.Finish();
        return new(track, corner, bar);
    }

    /// <summary>An axle's setup with what one corner has of its own.</summary>
    public static CornerSetup Change(JsonBlock corner, CornerSetup setup)
    {
        var changed = Heights(corner, setup) with
        {
            SpringRateNPerMm = corner.Stated("spring_rate_n_per_mm", Unknowns.SpringRate) ?? setup.SpringRateNPerMm,
            MotionRatio = corner.Stated("motion_ratio", Unknowns.MotionRatio) ?? setup.MotionRatio,
            TyreRateNPerMm = corner.Stated("tyre_rate_n_per_mm", Unknowns.TyreRate) ?? setup.TyreRateNPerMm,
            Perch = Perch(corner.Block("perch"), setup.Perch) ?? setup.Perch,
        };
        corner.Finish();
        return changed;
    }

    static CornerSetup Heights(JsonBlock block, CornerSetup setup) => setup with
    {
        LowestRideHeightMm = block.Number("lowest_ride_height_mm") ?? setup.LowestRideHeightMm,
        HighestRideHeightMm = block.Number("highest_ride_height_mm") ?? setup.HighestRideHeightMm,
    };

    static Perch? Perch(JsonBlock? block, Perch? otherwise)
    {
        if (block is null)
            return null;
        var canTurn = block.Flag("can_turn") ?? otherwise?.CanTurn ?? true;
        var pitch = block.Stated("pitch_mm_per_turn", Unknowns.Pitch) ?? otherwise?.PitchMmPerTurn;
        var (up, down) = (block.Number("up_turns_left") ?? otherwise?.UpTurnsLeft, block.Number("down_turns_left") ?? otherwise?.DownTurnsLeft);
        // A fixed seat has no thread to speak of.
        foreach (var (key, isThere) in canTurn ? new[] { ("pitch_mm_per_turn", pitch is not null || block.Has("pitch_mm_per_turn")), ("up_turns_left", up is not null), ("down_turns_left", down is not null) } : [])
            if (!isThere)
                block.Missing(key, key == "pitch_mm_per_turn" ? "{ \"value\": 2, \"u\": 0 } or \"unknown\"" : "6");
        block.Finish();
        return new() { PitchMmPerTurn = pitch ?? Unknowns.Pitch with { Assumed = canTurn }, CanTurn = canTurn, UpTurnsLeft = up ?? 0, DownTurnsLeft = down ?? 0 };
    }

    static AntiRollBar? Bar(JsonBlock? block)
    {
        if (block is null)
            return null;
        var (rate, connected) = (CarReader.Needed(block, "rate_n_per_mm", Unknowns.BarRate), block.Flag("connected") ?? false);
        block.Finish();
        return rate is { } r ? new(r, connected) : null;
    }
}
