using System.Globalization;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Recognition;

/// <summary>A Modbus slave that has answered.</summary>
/// <param name="Slave">Its address, 1 to 247.</param>
/// <param name="Answers">What it said to each question.</param>
internal sealed record FoundSlave(byte Slave, IReadOnlyList<SlaveAnswer> Answers) : Found
{
    public override string Protocol => "modbus-rtu";

    public override string Summary => $"slave {Slave.ToString(CultureInfo.InvariantCulture)} answers";

    public override IReadOnlyList<string> Remarks => ["Which registers hold the load, and of what type, stands in the device's manual."];

    /// <summary>The registers that it gave first; nothing when it refused all.</summary>
    public SlaveAnswer? Readable => Answers.FirstOrDefault(a => a.Refusal is null);
}

/// <summary>What a slave has said: registers, or why not.</summary>
internal sealed record SlaveAnswer(ModbusRequest Question, byte[] Data, ModbusException? Refusal)
{
    public string Describe()
    {
        var table = Question.Function == ModbusFunction.ReadInputRegisters ? "input" : "holding";
        if (Refusal is { } refusal)
            return string.Create(CultureInfo.InvariantCulture, $"slave {Question.Slave}: {table} registers refused with exception {(byte)refusal}");
        var registers = Enumerable.Range(0, Data.Length / 2).Select(k => (Data[2 * k] << 8 | Data[2 * k + 1]).ToString(CultureInfo.InvariantCulture));
        return string.Create(CultureInfo.InvariantCulture, $"slave {Question.Slave}: {table} registers 0 to {Question.Count - 1}: {string.Join(' ', registers)}");
    }
}
