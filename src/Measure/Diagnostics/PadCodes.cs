// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What is wrong with what a pad sends.</summary>
public static class PadCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("What pads send", "What is wrong with what a pad sends.");

    public static readonly Code BytesDamaged = Area.Declare(201, "Bytes arrive damaged", "Check cable, earth and baud rate.");
    public static readonly Code WrongPad = Area.Declare(202, "Another pad is on this port than the bay file names", "Exchange the cables, or correct serial_number in the bay file.");
    public static readonly Code FrameVersionUnknown = Area.Declare(203, "The pad speaks another version of pad frames", "Load pad firmware of the version that the message names, or a newer daemon.");
    public static readonly Code ConverterAtLimit = Area.Declare(204, "The converter of a cell is at its limit", "Take load off the pad; with the pad empty, check the cell and its cable.");
    public static readonly Code ConverterFault = Area.Declare(205, "The pad reports a converter fault", "Check the cell cables; restart the pad.");
    public static readonly Code ExcitationLow = Area.Declare(206, "The excitation of the cells is low", "Check the pad's supply and hub; charge or replace its battery.");
    public static readonly Code TiltSensorFailed = Area.Declare(207, "The tilt sensor has failed", "Check the sensor; loads go on without tilt correction.");
    public static readonly Code TiltUnknown = Area.Declare(208, "The tilt from a source of its own is not known", "Look at that source; loads go on without tilt correction.");
    public static readonly Code TiltBeyondCorrection = Area.Declare(209, "The pad is tilted too far for the correction", "Level the pad.");
    public static readonly Code SamplesLost = Area.Declare(210, "Samples are lost on the way", "Check cable and hub; plug the adapter into a port of its own.");
    public static readonly Code SlaveSilent = Area.Declare(211, "The slave does not answer", "Check its address, power, baud rate and parity, and A and B of the cable.");
    public static readonly Code SlaveRefuses = Area.Declare(212, "The slave refuses a question", "Compare the registers in the bay file with the device's manual.");
    public static readonly Code SlaveLate = Area.Declare(213, "The slave answers after its time", "Raise reply_timeout_ms, or set a shorter response delay in the device.");
    public static readonly Code SlaveTwice = Area.Declare(214, "The slave answers twice: two devices have its address", "Disconnect one of them and give it another address.");
    public static readonly Code ReplyLengthWrong = Area.Declare(215, "The slave answers with another number of registers", "Check the type of the registers in the bay file; restart the device.");
    public static readonly Code ValueStandsStill = Area.Declare(216, "The number of a cell stands still while samples go on", "Restart the pad; check the wire between cell, converter and board; release an indicator that holds its display.");
    public static readonly Code LinesNotUnderstood = Area.Declare(221, "Lines are not understood", "Compare the line with the pattern in the bay file; when it looks garbled, check baud rate and cable.");
}
