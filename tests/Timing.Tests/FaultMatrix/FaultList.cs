using System.Globalization;
using System.Text;
using ScaleLink.Api.V1;

namespace Timing.Tests.FaultMatrix;

/// <summary>Every fault that is tried, and for each protocol that is left out the reason. In <see cref="MatrixBay"/> LF speaks pad frames, RF Modbus, LR text.</summary>
internal static class FaultList
{
    private static readonly string[] Damaged = ["SL-201"];
    private static readonly string[] NotUnderstood = ["SL-201", "SL-221"];

    /// <summary>By name.</summary>
    public static readonly Dictionary<string, Fault> Tried = new()
    {
        ["unplug"] = new("""{"do":"unplug","corner":"CORNER"}""", """{"do":"replug","corner":"CORNER"}""", 0.25,
            (Corner.Lf, ["SL-105", "SL-101"]), (Corner.Lr, ["SL-105", "SL-101"])),
        ["unplug the bus"] = new("""{"do":"unplug","corner":"CORNER"}""", """{"do":"replug","corner":"CORNER"}""", 0.25,
            (Corner.Rf, ["SL-105", "SL-101"]), (Corner.Rr, ["SL-105", "SL-101"])),
        ["freeze"] = new("""{"do":"freeze","corner":"CORNER"}""", """{"do":"freeze","corner":"CORNER","on":false}""", 0.75,
            (Corner.Lf, ["SL-106"]), (Corner.Rf, ["SL-211"]), (Corner.Lr, ["SL-106"])),
        ["garbage"] = new("""{"do":"noise","corner":"CORNER","share":0.4}""", """{"do":"noise","corner":"CORNER","share":0}""", 3,
            (Corner.Lf, Damaged), (Corner.Rf, Damaged), (Corner.Lr, NotUnderstood)),
        ["bit errors 1e-4"] = new("""{"do":"garble","corner":"CORNER","bit_error_rate":0.0001}""", """{"do":"garble","corner":"CORNER","bit_error_rate":0}""", 20,
            (Corner.Lf, Damaged), (Corner.Rf, Damaged), (Corner.Lr, NotUnderstood)),
        ["bit errors 1e-2"] = new("""{"do":"garble","corner":"CORNER","bit_error_rate":0.01}""", """{"do":"garble","corner":"CORNER","bit_error_rate":0}""", 2,
            (Corner.Lf, Damaged), (Corner.Rf, Damaged), (Corner.Lr, NotUnderstood)),
        ["wrong baud rate"] = new("""{"do":"garble","corner":"CORNER","bit_error_rate":0.5}""", """{"do":"garble","corner":"CORNER","bit_error_rate":0}""", 2,
            (Corner.Lf, Damaged), (Corner.Rf, Damaged), (Corner.Lr, NotUnderstood)),
        ["truncation"] = new("""{"do":"truncate","corner":"CORNER","share":0.3}""", """{"do":"truncate","corner":"CORNER","share":0}""", 3,
            (Corner.Lf, Damaged), (Corner.Rf, Damaged), (Corner.Lr, NotUnderstood)),
        ["device restart"] = new("""{"do":"brown-out","corner":"CORNER"}""", "", 0.75,
            (Corner.Lf, ["SL-106"]), (Corner.Rf, ["SL-211"]), (Corner.Lr, ["SL-106"])),
        ["sequence jump"] = new("""{"do":"skip-sequence","corner":"CORNER","by":1000}""", "", 1, (Corner.Lf, ["SL-210"])),
        ["lost samples"] = new("""{"do":"drop","corner":"CORNER","share":0.05}""", """{"do":"drop","corner":"CORNER","share":0}""", 3, (Corner.Lf, ["SL-210"])),
        ["slave silent"] = new("""{"do":"silence","corner":"CORNER","seconds":1.5}""", "", 0.75, (Corner.Rf, ["SL-211"])),
        ["slave exception"] = new("""{"do":"exception","corner":"CORNER","code":4}""", """{"do":"exception","corner":"CORNER","code":0}""", 0.5, (Corner.Rf, ["SL-212"])),
        ["wrong check"] = new("""{"do":"wrong-check","corner":"CORNER","share":1}""", """{"do":"wrong-check","corner":"CORNER","share":0}""", 2, (Corner.Rf, Damaged)),
        ["two slaves answering"] = new("""{"do":"twin","corner":"CORNER"}""", """{"do":"twin","corner":"CORNER","on":false}""", 0.5, (Corner.Rf, ["SL-214"])),
        ["a stranger answering first"] = new("""{"do":"twin","corner":"CORNER","first":true}""", """{"do":"twin","corner":"CORNER","on":false}""", 0.5, (Corner.Rf, ["SL-214"])),
    };

    private const string NoNumbers = "nothing is numbered: the rate falls, `scalelink doctor` says so (SL-458)";
    private const string OneTalker = "two that talk at once garble each other: as garbage";
    private static readonly (string Name, Corner Corner)[] Protocols = [("pad frames", Corner.Lf), ("Modbus RTU", Corner.Rf), ("text lines", Corner.Lr)];

    private static readonly Dictionary<(string Fault, Corner Corner), string> LeftOut = new()
    {
        [("unplug", Corner.Rf)] = "as unplug the bus",
        [("unplug the bus", Corner.Lf)] = "as unplug",
        [("unplug the bus", Corner.Lr)] = "as unplug",
        [("sequence jump", Corner.Rf)] = "nothing is numbered",
        [("sequence jump", Corner.Lr)] = "nothing is numbered",
        [("lost samples", Corner.Rf)] = NoNumbers,
        [("lost samples", Corner.Lr)] = NoNumbers,
        [("slave silent", Corner.Lf)] = "as freeze",
        [("slave silent", Corner.Lr)] = "as freeze",
        [("slave exception", Corner.Lf)] = "never asked, so never refuses",
        [("slave exception", Corner.Lr)] = "never asked, so never refuses",
        [("wrong check", Corner.Lf)] = "as bit errors",
        [("wrong check", Corner.Lr)] = "as bit errors",
        [("two slaves answering", Corner.Lf)] = OneTalker,
        [("two slaves answering", Corner.Lr)] = OneTalker,
        [("a stranger answering first", Corner.Lf)] = OneTalker,
        [("a stranger answering first", Corner.Lr)] = OneTalker,
    };

    /// <summary>The table of docs/faults.md. A fault that is neither tried on a protocol nor left out with a reason throws.</summary>
    public static string Table()
    {
        var table = new StringBuilder("| fault | " + string.Join(" | ", Protocols.Select(p => p.Name)) + " | named within |\n|---|---|---|---|---|\n");
        foreach (var (name, fault) in Tried)
            table.Append(CultureInfo.InvariantCulture, $"| {name} | {string.Join(" | ", Protocols.Select(p => Cell(name, fault, p.Corner)))} | {fault.Within} s |\n");
        return table.ToString();
    }

    private static string Cell(string name, Fault fault, Corner corner) => (fault.Named.FirstOrDefault(n => n.Corner == corner).Codes, LeftOut.GetValueOrDefault((name, corner))) switch
    {
        ({ } codes, null) => string.Join(" or ", codes),
        (null, { } reason) => reason,
        (null, null) => throw new InvalidOperationException($"{name} is neither tried on {corner} nor left out with a reason."),
        _ => throw new InvalidOperationException($"{name} is tried on {corner} and left out as well."),
    };
}
