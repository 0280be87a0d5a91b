using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.Modbus;

/// <summary>Registers next to each other, read with one question.</summary>
/// <param name="Function">Which table.</param>
/// <param name="Address">The first register, from 0.</param>
/// <param name="Count">How many.</param>
readonly record struct RegisterBlock(ModbusFunction Function, ushort Address, int Count);

/// <summary>
/// The numbers of one slave, and the fewest questions that read them. Only registers that are named are asked for: many devices
/// refuse a block with a hole in it.
/// </summary>
sealed class RegisterMap
{
    /// <summary>A map of at least one number.</summary>
    /// <exception cref="ArgumentException"><see cref="Problems"/> has something to say.</exception>
    public RegisterMap(IReadOnlyList<RegisterField> fields)
    {
        if (Problems(fields).FirstOrDefault() is { } problem)
            throw new ArgumentException($"This is no register map: {problem}.", nameof(fields));
        Fields = fields;
        Blocks = Join(fields);
    }

    /// <summary>The numbers.</summary>
    public IReadOnlyList<RegisterField> Fields { get; }

    /// <summary>The questions, in the order in which they are asked.</summary>
    public IReadOnlyList<RegisterBlock> Blocks { get; }

    /// <summary>What is wrong with the numbers together; empty when nothing is.</summary>
    public static IEnumerable<string> Problems(IReadOnlyList<RegisterField> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        if (fields.Count == 0)
            yield return "no register is named";
        foreach (var field in fields.Where(f => f.Address + f.Registers > 0x10000))
            yield return $"register {field.Address} is the last and has no second half";
        foreach (var problem in FieldSet.Problems([.. fields.Select(f => f.Rule)]))
            yield return problem;
    }

    static List<RegisterBlock> Join(IReadOnlyList<RegisterField> fields)
    {
        var blocks = new List<RegisterBlock>();
        foreach (var field in fields.OrderBy(f => f.Function).ThenBy(f => f.Address))
        {
            var last = blocks.Count > 0 ? blocks[^1] : default;
            var end = Math.Max(last.Address + last.Count, field.Address + field.Registers);
            if (last.Function == field.Function && field.Address <= last.Address + last.Count && end - last.Address <= ModbusRequest.MostRegisters)
                blocks[^1] = last with { Count = end - last.Address };
            else
                blocks.Add(new RegisterBlock(field.Function, field.Address, field.Registers));
        }

        return blocks;
    }
}
