using System.Text;
using CarOnPads.Ports;
using CarOnPads.Runtime;

namespace CarOnPads.Tests.Ports;

/// <summary>Worked by hand, bit by bit, on the frame of an asynchronous character: start bit 0, data from the lowest bit up, parity, stop bit 1 (from memory).</summary>
public class UartTests
{
    static readonly LineSetting s_plain = new(9600, LineParity.None);
    static readonly byte[] s_text = Encoding.ASCII.GetBytes("ST,GS,+012.50kg\r\n");

    [Theory]
    [InlineData("none")]
    [InlineData("even")]
    [InlineData("odd")]
    public void Set_alike_they_understand_each_other(string name)
    {
        var parity = Enum.Parse<LineParity>(name, ignoreCase: true);
        var setting = new LineSetting(9600, parity);
        Assert.Equal(s_text, Uart.Carry(s_text, setting, setting, wrong: 0));
        // A crystal that is 2 % off still hits each bit: half a bit of room over ten bits.
        Assert.Equal(s_text, Uart.Carry(s_text, setting, new LineSetting(9792, parity), wrong: 0));
    }

    // 0x55 changes level with every bit. At twice the rate each is seen twice: 0 1 1 0 0 1 1 0 and no stop bit; then from the next falling edge 0 1 1 0 0, stop and rest.
    [Fact]
    public void At_twice_the_rate_one_character_is_two_others() =>
        Assert.Equal([0x66, 0xE6], Uart.Carry([0x55], s_plain, new LineSetting(19200, LineParity.None), wrong: 0));

    // At half the rate no start bit is long enough.
    [Fact]
    public void At_half_the_rate_it_is_nothing() => Assert.Empty(Uart.Carry([0x55], s_plain, new LineSetting(4800, LineParity.None), wrong: 0));

    // A has two ones, C three: the stop bit stands where an even parity bit would, and is right for C.
    [Theory]
    [InlineData('A', 0)]
    [InlineData('C', 'C')]
    public void Without_parity_half_of_the_characters_look_wrong_to_who_wants_one(char sent, int heard) =>
        Assert.Equal([(byte)heard], Uart.Carry([(byte)sent], s_plain, new LineSetting(9600, LineParity.Even), wrong: 0));

    [Fact]
    public void The_wrong_parity_is_wrong_for_each_character_and_a_device_drops_it()
    {
        var (even, odd) = (new LineSetting(9600, LineParity.Even), new LineSetting(9600, LineParity.Odd));
        Assert.All(Uart.Carry(s_text, even, odd, wrong: 0), value => Assert.Equal(0, value));
        Assert.Empty(Uart.Carry(s_text, even, odd, wrong: null));
    }

    [Fact]
    public void Who_checks_no_parity_takes_its_bit_for_a_stop_bit_and_hands_on_all_the_same() =>
        Assert.Equal(s_text, Uart.Carry(s_text, new LineSetting(9600, LineParity.Odd), s_plain, wrong: 0));

    [Theory]
    [InlineData("LF=9600", "CP-105")]
    [InlineData("LF=300/none", "CP-105")]
    [InlineData("LF=9600/2", "CP-105")]
    [InlineData("LF=9600/mark", "CP-105")]
    [InlineData("FL=9600/none", "CP-107")]
    public void What_is_no_setting_is_refused(string text, string code) => Assert.Equal(code, Assert.Throws<SimulatorException>(() => LineSetting.Parse(text, ["LF", "BUS"])).Code);

    [Fact]
    public void A_setting_is_read() => Assert.Equal(new LineSetting(19200, LineParity.Odd), LineSetting.Parse("LF=9600/none, BUS=19200/odd", ["LF", "BUS"])["BUS"]);
}
