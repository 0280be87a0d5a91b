using CsCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.Statics;

namespace Weighing.Tests.Statics;

public class ContactsTests
{
    static readonly Gen<Contacts> GenContacts = Gen.Select(
        Gen.Select(Gen.Double[-80, 80], Gen.Double[-80, 80], Gen.Double[-2600, -2000], Gen.Double[-2600, -2000], (a, b, c, d) => new Corners(a, b, c, d)),
        Gen.Select(Gen.Double[600, 900], Gen.Double[-900, -600], Gen.Double[600, 900], Gen.Double[-900, -600], (a, b, c, d) => new Corners(a, b, c, d)),
        (x, y) => new Contacts(x, y));

    [Fact]
    public void A_rectangle_has_the_plain_pattern()
    {
        var pattern = Contacts.FromAxles(2400, 1500, 1500).WarpPattern;
        foreach (var corner in Corners.All)
            Assert.Equal(new Corners(1, -1, -1, 1)[corner], pattern[corner], 12);
    }

    [Fact]
    public void The_pattern_of_any_four_contacts_has_no_sum_and_no_moment() => GenContacts.Sample(contacts =>
    {
        var n = contacts.WarpPattern;
        Assert.Equal(0, n.Sum, 1e-10);
        Assert.Equal(0, n.Dot(contacts.X), 1e-7);
        Assert.Equal(0, n.Dot(contacts.Y), 1e-7);
        Assert.Equal(4, n.Dot(n), 1e-10);
        Assert.True(n.LF > 0);
    }, iter: 500);

    [Fact]
    public void Slopes_of_a_plane_come_back_and_warp_has_none() =>
        Gen.Select(GenContacts, Gen.Double[-0.1, 0.1], Gen.Double[-0.1, 0.1], Gen.Double[-5, 5]).Sample((contacts, sx, sy, warp) =>
        {
            var heights = Corners.Same(7) + sx * contacts.X + sy * contacts.Y + warp * contacts.WarpPattern;
            Assert.Equal(sx, contacts.SlopeAlongX.Dot(heights), 1e-10);
            Assert.Equal(sy, contacts.SlopeAlongY.Dot(heights), 1e-10);
            Assert.Equal(warp, contacts.WarpOf(heights), 1e-9);
        }, iter: 500);

    [Fact]
    public void Contacts_on_a_line_are_refused() =>
        Assert.Equal(CarCodes.Geometry, Assert.Throws<DiagnosticException>(() => new Contacts(new(0, 0, 0, 0), new(1, 2, 3, 4)).WarpPattern).Diagnostics[0].Code);
}
