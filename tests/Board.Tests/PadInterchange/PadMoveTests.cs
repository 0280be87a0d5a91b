using ScaleLink.Api.V1;
using ScaleLink.Board.PadInterchange;

namespace Board.Tests.PadInterchange;

/// <summary>Which pad goes where. Own words and own logic; no published source.</summary>
public class PadMoveTests
{
    [Fact]
    public void Pads_are_named_by_where_the_crew_finds_them()
    {
        var view = Going(["b", "c", "d", "a"], ["a", "b", "c", "d"]);
        Assert.Equal(["RF to LF", "LR to RF", "RR to LR", "LF to RR"], PadMove.Of(view).Select(m => m.Name));
        Assert.Contains("carry the pads: RF to LF, LR to RF, RR to LR, LF to RR.", InterchangeWords.Do(view));
    }

    [Fact]
    public void A_pad_that_is_there_is_not_carried_and_one_that_nobody_hears_goes_by_its_number()
    {
        var view = Going(["b", "c", "d", "a"], ["b", "", "d", "a"]);
        Assert.Equal([true, false, true, true], PadMove.Of(view).Select(m => m.IsThere));
        Assert.Contains("carry the pads: c to RF.", InterchangeWords.Do(view));
    }

    [Fact]
    public void Pads_that_stand_right_are_to_be_zeroed_and_where_any_place_will_do_none_is_moved()
    {
        Assert.StartsWith("The pads stand where they have to.", InterchangeWords.Do(Going(["b", "c", "d", "a"], ["b", "c", "d", "a"])));
        var first = Going([], ["a", "b", "c", "d"]);
        Assert.Empty(PadMove.Of(first));
        Assert.Contains("Each pad stays where it stands", InterchangeWords.Do(first));
        first.Ready = true;
        Assert.Contains("on record", InterchangeWords.Do(first));
    }

    // By hand: a relative departure of -0.00123 is 0.123 % low.
    [Fact]
    public void A_departure_says_which_way_and_how_sure()
    {
        var pad = new PadDeparture { Relative = -0.00123, Expanded = 0.00045, Departs = true };
        Assert.Equal("0.123 % low \u00b1 0.045", InterchangeWords.Reads(pad));
        Assert.Equal("departs: calibrate it with masses", InterchangeWords.Verdict(pad));
        Assert.Equal("no departure seen", InterchangeWords.Verdict(new PadDeparture()));
    }

    private static InterchangeView Going(string[] next, string[] present) => new() { State = InterchangeState.Measuring, Next = { next }, Present = { present } };
}
