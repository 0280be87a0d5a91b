using System.Globalization;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Search;

/// <summary>
/// Finds all Modbus slaves of a line: first the usual addresses at every rate and parity, then, at the one at which somebody answers, all others. Where
/// nobody answers, all addresses at every rate and parity, until the time is up.
/// </summary>
internal sealed class BusSearch(ProbedPort port, SearchSettings settings, bool hasRates, TimeProvider time, Action<string> tell)
{
    private static readonly byte[] Usual = [1, 2, 3, 4, 5, 6, 7, 8];
    private static readonly byte[] All = [.. Enumerable.Range(ModbusRequest.LowestSlave, ModbusRequest.HighestSlave).Select(a => (byte)a)];

    private readonly SlaveQuestions _questions = new(port, time);
    private readonly IReadOnlyList<LineSetting> _settings = LineSetting.ToAsk(settings, hasRates);
    private readonly long _start = time.GetTimestamp();

    /// <summary>Who answers, and what his registers hold.</summary>
    public PortFinding Find(CancellationToken stop)
    {
        var (first, rest) = settings.Slaves.Count > 0 ? ([.. settings.Slaves], []) : (Usual, All.Except(Usual).ToArray());
        tell($"asks slaves {Words(first)} at {Count(_settings.Count)}, {Seconds(first.Length, _settings)}"
            + (rest.Length > 0 ? $"; then all at the one that answers, or at each, {Seconds(settings.AskingAtMost)} at most" : ""));
        var asked = new List<(LineSetting Setting, byte Last)>();
        foreach (var (slaves, isLast) in new[] { (first, rest.Length == 0), (rest, true) })
        {
            foreach (var setting in _settings)
            {
                if (!port.TrySet(setting.Baud, setting.Format))
                    continue;
                var search = new SlaveSearch(_questions, hasRates ? setting.Baud : null);
                var last = (byte)0;
                var found = search.Answering(slaves, slave => GoesOn(setting, slave, ref last), stop);
                if (found.Count > 0)
                    return Finding(setting, [.. found, .. isLast ? [] : search.Answering(rest, slave => Told(setting, slave), stop)], stop);
                if (isLast)
                    asked.Add((setting, last));
            }
        }

        return Nobody(first.Length > 0 && rest.Length == 0 ? first : All, asked);
    }

    private bool GoesOn(LineSetting setting, byte slave, ref byte last)
    {
        if (time.GetElapsedTime(_start) > settings.AskingAtMost)
            return false;
        last = slave;
        return Told(setting, slave);
    }

    private bool Told(LineSetting setting, byte slave)
    {
        const int Every = 20;
        if (slave % Every == 1)
            tell($"asks slave {slave.ToString(CultureInfo.InvariantCulture)} and on{(hasRates ? $" at {setting.Words}" : "")}, {Seconds(time.GetElapsedTime(_start))} so far");
        return true;
    }

    private PortFinding Finding(LineSetting setting, IEnumerable<byte> answering, CancellationToken stop)
    {
        var registers = new RegisterSearch(_questions);
        var slaves = answering.Order().Select(slave =>
        {
            tell($"reads the registers of slave {slave.ToString(CultureInfo.InvariantCulture)}");
            return registers.Of(slave, stop);
        }).ToList();
        return new PortFinding
        {
            Port = "",
            Link = "",
            Baud = setting.Baud,
            Format = setting.Format,
            Bytes = slaves.Sum(s => s.Tables.Sum(t => 2 * t.Count)),
            Heard = [.. slaves.SelectMany(s => s.Tables.Select(t => $"slave {s.Slave.ToString(CultureInfo.InvariantCulture)}: {t.Describe()}"))],
            Found = slaves,
        };
    }

    private PortFinding Nobody(byte[] slaves, List<(LineSetting Setting, byte Last)> asked)
    {
        var whole = asked.Where(a => a.Last == slaves[^1]).Select(a => a.Setting.Words).ToList();
        var left = _settings.Select(s => s.Words).Except(whole).ToList();
        var where = hasRates ? $" at {string.Join(", ", whole.Count > 0 ? whole : ["no setting in whole"])}" : "";
        return new PortFinding
        {
            Port = "",
            Link = "",
            Baud = _settings[0].Baud,
            Format = _settings[0].Format,
            Found = [new FoundNothing($"Nobody answers under {Words(slaves)}{where}",
            [
                .. left.Count > 0 ? new[] { $"Not asked in the time that was given: {(hasRates ? string.Join(", ", left) : "the addresses to the end")}. Give it more time, or name rate and parity (scalelink probe --at-most, --baud, --parity)." } : [],
                "Check address and power, and A and B of the cable.",
            ])],
        };
    }

    private static string Words(byte[] slaves) => slaves.Length > 2 && slaves[^1] - slaves[0] == slaves.Length - 1
        ? string.Create(CultureInfo.InvariantCulture, $"{slaves[0]} to {slaves[^1]}")
        : string.Join(", ", slaves.Select(s => s.ToString(CultureInfo.InvariantCulture)));

    private string Count(int count) => hasRates ? string.Create(CultureInfo.InvariantCulture, $"{count} rates and parities") : "a pseudo-terminal";

    private string Seconds(int slaves, IEnumerable<LineSetting> at) => Seconds(slaves * at.Aggregate(TimeSpan.Zero, (sum, s) => sum + SlaveSearch.Wait(hasRates ? s.Baud : null)));

    private static string Seconds(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(time.TotalSeconds)} s");
}
