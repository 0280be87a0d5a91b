using System.Buffers;
using CarOnPads.Bench;
using CarOnPads.Control;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Runtime;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Tests.Bus;

/// <summary>Slaves on one cable, asked by the real decoder.</summary>
public sealed class BusTests : IDisposable
{
    const ModbusFunction Holding = ModbusFunction.ReadHoldingRegisters;
    readonly Tap _bus = new();
    readonly Tap _own = new();
    readonly Bay _bay;
    readonly ModbusReplyDecoder _decoder = new();

    public BusTests()
    {
        _bay = new Bay(new BayOptions { Hertz = 80, Raised = true, Speaking = Speaking.Parse("LF=modbus,RF=modbus,RR=text", tiltOnBus: true) }, _ => _own, () => _bus);
        _bay.AdvanceTo(0.1);
    }

    public void Dispose() => _bay.Dispose();

    [Fact]
    public void Each_slave_answers_for_its_pad_and_each_inclinometer_for_its_own()
    {
        Do("""{"do":"mass","corner":"RF","kg":40}""");
        Do("""{"do":"pad-tilt","corner":"LR","pitch_deg":0.8,"roll_deg":-0.3}""");
        _bay.AdvanceTo(3);
        Assert.Equal(0, Load(1), 0.01);
        Assert.Equal(40, Load(2), 0.01);
        Assert.Equal(["00 00"], Ask(new ModbusRequest(1, ModbusFunction.ReadInputRegisters, 11, 1)).Select(a => Hex(a.Data)));
        Assert.Equal(["03 20 FE D4"], Ask(new ModbusRequest(13, Holding, 0, 2)).Select(a => Hex(a.Data)));
        // The pads themselves say nothing of tilt while it is on the bus.
        Assert.Equal(["80 00 80 00"], Ask(new ModbusRequest(1, Holding, 8, 2)).Select(a => Hex(a.Data)));
        Assert.Empty(Ask(new ModbusRequest(3, Holding, 0, 2)));
    }

    [Fact]
    public void A_pad_answers_under_the_address_that_it_was_given_and_under_no_other()
    {
        var bus = new Tap();
        var options = new BayOptions { Hertz = 80, Raised = true, Speaking = Speaking.Parse("LF=modbus"), Slaves = BusSlaves.Parse("LF=247") };
        using var bay = new Bay(options, _ => new Tap(), () => bus);
        bay.AdvanceTo(0.1);
        foreach (var (slave, answers) in new[] { ((byte)1, false), ((byte)247, true) })
        {
            var frame = new byte[ModbusRequest.Length];
            new ModbusRequest(slave, Holding, 0, 1).Write(frame);
            bus.Clear();
            bus.Say(frame);
            bay.AdvanceTo(bay.Time + 0.1);
            Assert.Equal(answers, bus.Bytes.Length > 0);
        }
    }

    [Theory]
    [InlineData("LF=0", "CP-105")]
    [InlineData("LF=248", "CP-105")]
    [InlineData("FL=3", "CP-107")]
    [InlineData("3", "CP-107")]
    public void What_is_no_address_is_refused(string text, string code) => Assert.Equal(code, Assert.Throws<SimulatorException>(() => BusSlaves.Parse(text)).Code);

    [Theory]
    [InlineData("LF=2")]
    [InlineData("LF=13")]
    public void Two_of_one_address_are_refused(string slaves)
    {
        var options = new BayOptions { Speaking = Speaking.Parse("LF=modbus,RF=modbus", tiltOnBus: true), Slaves = BusSlaves.Parse(slaves) };
        Assert.Equal("CP-109", Assert.Throws<SimulatorException>(() => new Bay(options, _ => new Tap(), () => new Tap())).Code);
    }

    [Fact]
    public void What_does_not_exist_is_refused_and_what_is_no_question_is_not_heard()
    {
        Assert.Equal([ModbusException.IllegalDataAddress], Ask(new ModbusRequest(1, Holding, 11, 2)).Select(a => a.Code));
        _bus.Say([1, 3, 0, 0, 0, 2, 0, 0, 9]);
        Assert.Equal(0, Load(1), 0.01);
    }

    [Fact]
    public void Faults_of_one_slave_are_what_a_host_must_tell_apart()
    {
        Do("""{"do":"exception","corner":"LF","code":4}""");
        Assert.Equal([ModbusException.ServerDeviceFailure], Ask(Cells(1)).Select(a => a.Code));
        Do("""{"do":"exception","corner":"LF","code":0}""");

        Do("""{"do":"twin","corner":"LF"}""");
        Assert.Equal(2, Ask(Cells(1)).Select(a => Hex(a.Data)).Distinct().Count());
        Do("""{"do":"twin","corner":"LF","on":false}""");

        Do("""{"do":"wrong-check","corner":"LF","share":1}""");
        Assert.Empty(Ask(Cells(1)));
        Assert.Single(Ask(Cells(2)));
        Do("""{"do":"wrong-check","corner":"LF","share":0}""");

        Do("""{"do":"truncate","corner":"LF","share":1}""");
        Assert.Empty(Ask(Cells(1)));
        Do("""{"do":"truncate","corner":"LF","share":0}""");

        Do("""{"do":"freeze","corner":"LF"}""");
        Assert.Empty(Ask(Cells(1)));
        Do("""{"do":"freeze","corner":"LF","on":false}""");

        Do("""{"do":"echo","on":true}""");
        Assert.Single(Ask(Cells(1)));
        Assert.Equal(1, _decoder.Counters.Echoes);
        Assert.Empty(_bay.Pad(Wheel.LF).Faults.Present(_bay.Time));
    }

    static ModbusRequest Cells(byte slave) => new(slave, Holding, 0, 8);

    double Load(byte slave)
    {
        var data = Assert.Single(Ask(Cells(slave))).Data;
        return Enumerable.Range(0, 4).Sum(cell => System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(data.AsSpan(4 * cell))) * _bay.Pad((Wheel)(slave - 1)).KgPerCount;
    }

    List<(byte[] Data, ModbusException Code)> Ask(ModbusRequest question)
    {
        _bus.Clear();
        var frame = new byte[ModbusRequest.Length];
        question.Write(frame);
        _bus.Say(frame);
        _bay.AdvanceTo(_bay.Time + 0.004);
        _bay.AdvanceTo(_bay.Time + 0.02);
        _decoder.Expect(question);
        var answers = new List<(byte[], ModbusException)>();
        var input = new ReadOnlySequence<byte>(_bus.Bytes);
        while (_decoder.TryRead(input, out var consumed, out _, out var reply))
        {
            answers.Add((reply.Data.ToArray(), reply.Exception));
            input = input.Slice(consumed);
        }

        return answers;
    }

    void Do(string command) => Assert.StartsWith("{\"ok\":true", Conversation.Answer(_bay, command));

    static string Hex(byte[] bytes) => string.Join(' ', bytes.Select(b => b.ToString("X2")));
}
