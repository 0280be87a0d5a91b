using ScaleLink.Weighing.Calibration.Results;
using Weighing.Tests.Statistics;

namespace Weighing.Tests.Calibration.Results;

public class LimitTests
{
    [Fact]
    public void Error_limits_agree_with_OIML_R_76_row_by_row()
    {
        // OIML R 76-1:2006, Table 6. A row holds for over < load <= up to.
        var rows = ReferenceData.Rows("oiml-r76-1-2006-mpe.csv");
        Assert.Equal(12, rows.Count);
        foreach (var row in rows)
        {
            var weighing = Enum.Parse<AccuracyClass>(row["class"]);
            var factor = ReferenceData.Number(row["mpe_e"]);
            var over = ReferenceData.Number(row["load_over_e"]);
            Assert.Equal(factor, ErrorLimits.Factor(weighing, over + 0.001));
            if (row["load_up_to_e"].Length > 0)
            {
                var upTo = ReferenceData.Number(row["load_up_to_e"]);
                Assert.Equal(factor, ErrorLimits.Factor(weighing, upTo));
                Assert.NotEqual(factor, ErrorLimits.Factor(weighing, upTo + 0.001));
            }
        }
    }

    [Fact]
    public void A_corner_of_450_kg_with_e_of_200_g_may_be_300_g_off() =>
        Assert.Equal(0.3, ErrorLimits.Kg(AccuracyClass.III, 450, 0.2)!.Value, 1e-12);

    [Fact]
    public void Creep_limits_of_a_C3_cell_as_published()
    {
        // OIML R 60-1:2021, 5.5.1: 0.735 v in 30 minutes, 0.1575 v between 20 and 30, at full load with p_LC 0.7.
        var example = ReferenceData.Json("oiml-r60-2021-load-cells.json").GetProperty("worked_examples")[0];
        Assert.Equal(example.GetProperty("total_v").GetDouble(), LoadCellLimits.Creep(3000)!.Value, 1e-12);
        Assert.Equal(example.GetProperty("between_20_and_30_min_v").GetDouble(), LoadCellLimits.LateCreep(3000)!.Value, 1e-12);
    }

    [Fact]
    public void Zero_return_read_late_as_published()
    {
        // OIML R 60-2:2021, 2.8.3.2.
        var example = ReferenceData.Json("oiml-r60-2021-load-cells.json").GetProperty("worked_examples")[1];
        foreach (var pair in example.GetProperty("check").EnumerateArray())
            Assert.Equal(pair[1].GetDouble(), LoadCellLimits.ZeroReturn(pair[0].GetDouble())!.Value, 1e-12);
        Assert.Null(LoadCellLimits.ZeroReturn(1.6));
    }

    [Fact]
    public void Load_cell_errors_of_class_C_agree_with_OIML_R_60()
    {
        // OIML R 60-1:2021, Table 4, class C.
        var rows = ReferenceData.Json("oiml-r60-2021-load-cells.json").GetProperty("limits").GetProperty("mpe_table_4").GetProperty("C");
        foreach (var row in rows.EnumerateArray())
            Assert.Equal(0.7 * row[2].GetDouble(), LoadCellLimits.Error(row[1].GetDouble())!.Value, 1e-12);
    }

    [Fact]
    public void Settling_times_agree_with_OIML_R_60()
    {
        // OIML R 60-2:2021, Table 1, classes C and D.
        var rows = ReferenceData.Json("oiml-r60-2021-load-cells.json").GetProperty("settling_time_before_reading_s").GetProperty("rows");
        foreach (var row in rows.EnumerateArray())
            Assert.Equal(row[2].GetDouble(), LoadCellLimits.SettlingSeconds(row[0].GetDouble() + 0.5));
    }
}
