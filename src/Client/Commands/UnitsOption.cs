using System.CommandLine;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Commands;

/// <summary>In which units this terminal shows and takes loads, lengths and rates. Given once, it is remembered. JSON and files stay in kg and mm.</summary>
internal static class UnitsOption
{
    public static Option<string> Create(Shell shell)
    {
        var option = new Option<string>("--units")
        {
            Description = "What loads, lengths and rates are shown and taken in; remembered for the next commands. JSON and CSV stay in kg and mm.",
            DefaultValueFactory = _ => Units.Named(shell.Memory?.Read().Units).Name, HelpName = "kg-mm|lb-in", Recursive = true,
        };
        option.AcceptOnlyFromAmong(Units.Metric.Name, Units.PoundInch.Name);
        return option;
    }
}
