using System.Reflection;
using ScaleLink.Weighing.Calibration;

namespace Weighing.Tests.Calibration.Refusals;

public class CatalogueTests
{
    [Fact]
    public void Every_refusal_is_listed_once_with_a_code_of_its_own_and_a_mend()
    {
        var fields = typeof(CalibrationRefusals).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(f => f.GetValue(null)).OfType<RefusalKind>().ToList();
        Assert.Equal(fields.OrderBy(k => k.Code), CalibrationRefusals.All.OrderBy(k => k.Code));
        Assert.Equal(fields.Count, fields.Select(k => k.Code).Distinct().Count());
        Assert.All(fields, kind =>
        {
            Assert.Matches("^SL-3[0-9]{2}$", kind.Code);
            Assert.EndsWith(".", kind.Mend, StringComparison.Ordinal);
            Assert.False(kind.Title.EndsWith('.'));
        });
    }
}
