using Google.Protobuf.WellKnownTypes;
using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.SetupSheets;
using ScaleLink.Measure;

namespace Client.Tests.SetupSheets;

/// <summary>Setup sheets as lines, in the units of the terminal.</summary>
public class SheetPageTests
{
    private static readonly Glyphs Pounds = Glyphs.Plain with { Units = Units.PoundInch };

    [Fact]
    public void What_four_corners_share_is_said_once_and_what_they_do_not_beside_each_other()
    {
        var text = string.Join('\n', SheetPage.Whole(Sheet(Rate("LF", 70), Rate("RF", 70), Rate("LR", 62), Rate("RR", 62)), Glyphs.Plain));
        Assert.Contains("Spring rate                          LF 70 N/mm  RF 70 N/mm  LR 62 N/mm  RR 62 N/mm", text, StringComparison.Ordinal);
        Assert.Contains("Spring rate                          70 N/mm", string.Join('\n', SheetPage.Whole(Sheet(Rate("LF", 70), Rate("RF", 70), Rate("LR", 70), Rate("RR", 70)), Glyphs.Plain)), StringComparison.Ordinal);
        // 70.0507 N/mm are 400 lb/in (NIST Special Publication 811:2008, appendix B.8).
        Assert.Contains("LF 400 lb/in", string.Join('\n', SheetPage.Whole(Sheet(Rate("LF", 70.050734), Rate("RF", 70)), Pounds)), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_what_turns_move_is_marked_and_only_after_turns()
    {
        var now = new SheetNow { Car = "Heron", Sheet = Sheet(Rate("LF", 70), Height("LF", 90)), HasTurns = true, TurnsSince = new() { Lf = 1.5, Rr = -0.25 } };
        var text = string.Join('\n', SheetPage.Now(now, Glyphs.Plain));
        Assert.Contains("~ Ride height at the mark", text, StringComparison.Ordinal);
        Assert.DoesNotContain("~ Spring rate", text, StringComparison.Ordinal);
        Assert.Contains("Turned since: LF +1.5, RF 0, LR 0, RR -0.25.", text, StringComparison.Ordinal);
        now.HasTurns = false;
        Assert.DoesNotContain("~", string.Join('\n', SheetPage.Now(now, Glyphs.Plain)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_came_or_went_between_two_versions_has_nothing_on_its_other_side()
    {
        var comparison = new SheetComparison { First = Sheet(), Second = Sheet() };
        comparison.Differences.Add(new SheetDifference { Words = "Spring rate LF", First = Rate("LF", 70), Second = Rate("LF", 90) });
        comparison.Differences.Add(new SheetDifference { Words = "Tyre set", Second = new() { Text = "B" } });
        var lines = SheetPage.Difference(comparison, Glyphs.Plain).ToList();
        Assert.EndsWith("70 N/mm -> 90 N/mm", lines[1], StringComparison.Ordinal);
        Assert.EndsWith("- -> B", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Names_and_texts_of_others_do_nothing_to_the_terminal_and_a_field_of_a_later_build_is_shown_as_it_is()
    {
        var sheet = Sheet(new SheetValue { Slot = "inerters.mass.LF", Words = "inerters.mass LF", Group = "inerters", Number = 3.5 }, new SheetValue { Slot = "tyres.set", Words = "Tyre set", Group = "tyres", Text = "A\u001b[2J" });
        sheet.Key.Track = "Moor\u001b]0;x\u0007" + new string('m', 200);
        var text = string.Join('\n', SheetPage.Whole(sheet, Glyphs.Plain).Concat(SheetPage.List([sheet])));
        Assert.DoesNotContain(text, sign => char.IsControl(sign) && sign != '\n');
        Assert.Contains("3.5", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length < 240, line));
    }

    private static SetupSheet Sheet(params SheetValue[] values)
    {
        var sheet = new SetupSheet { Key = new() { Car = "Heron", Track = "Bramble Moor", Driver = "first driver" }, Version = 2, Who = "crew", SavedAt = Timestamp.FromDateTimeOffset(DateTimeOffset.UnixEpoch) };
        sheet.Values.AddRange(values);
        return sheet;
    }

    private static SheetValue Rate(string place, double number) => new() { Slot = $"springs.rate.{place}", Words = $"Spring rate {place}", Group = "springs", Unit = "N/mm", Number = number };

    private static SheetValue Height(string place, double number) => new() { Slot = $"heights.ride_height.{place}", Words = $"Ride height at the mark {place}", Group = "heights", Unit = "mm", Number = number, MovesWithPerches = true };
}
