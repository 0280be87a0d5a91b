using Google.Protobuf;
using ScaleLink.Api;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Measure.Sentences;
using static ScaleLink.Measure.Sentences.Arguments;
using Wire = ScaleLink.Api.V1;

namespace Daemon.Tests.Contract;

/// <summary>1 lb = 0.453 592 37 kg and 1 in = 25.4 mm, both exact (NIST Special Publication 811:2008, appendix B.8).</summary>
public class SentencesOnTheWireTests
{
    private static readonly Diagnostic Told = new(SiteCheckCodes.PadLoaded, $"LF reads {Kg(260.5):+0.0}, {BareKg(1.25):0.##} of {Mm(25.4)} {{here}}.", $"Within {Mm(12.7):0}.") { Where = "pads", Line = 3 };

    [Fact]
    public void A_diagnostic_comes_back_as_it_was_said()
    {
        var read = Travelled(Wire.Diagnostic.Of(Told)).Read();
        Assert.Equal(Told, read);
        Assert.Equal(Told.Message.Arguments, read.Message.Arguments);
        Assert.Equal("LF reads +574.3 lb, 2.76 of 1 in {here}.", read.Message.In(Unit.Pound, Unit.Inch));
        Assert.Equal("Within 0.50 in.", read.Remedy.In(Unit.Pound, Unit.Inch));
    }

    [Fact]
    public void Its_text_stands_beside_it_in_kg_and_mm()
    {
        var wire = Travelled(Wire.Diagnostic.Of(Told));
        Assert.Equal("LF reads +260.5 kg, 1.25 of 25.4 mm {here}.", wire.Message);
        Assert.Equal("Within 13 mm.", wire.Remedy);
        Assert.Equal("LF reads {0}, {1} of {2} {{here}}.", wire.TypedMessage.Pattern);
        Assert.Equal([Wire.ArgumentKind.Mass, Wire.ArgumentKind.Mass, Wire.ArgumentKind.Length], wire.TypedMessage.Arguments.Select(q => q.Kind));
    }

    [Fact]
    public void Without_arguments_the_text_is_all()
    {
        var wire = Wire.Diagnostic.Of(new(SiteCheckCodes.PadLoaded, "Something {0}.", "Nothing."));
        Assert.Null(wire.TypedMessage);
        Assert.Null(wire.TypedRemedy);
        Assert.Equal("Something {0}.", wire.Read().Message.In(Unit.Pound, Unit.Inch));
    }

    [Fact]
    public void What_does_not_belong_together_is_read_by_its_text()
    {
        Sentence known = "as told";
        Assert.Equal(known, Wire.Sentence.Read("as told", new() { Pattern = "{0}" }));
        Assert.Equal(known, Wire.Sentence.Read("as told", new() { Pattern = "{0}", Arguments = { new Wire.Argument { Value = 1 } } }));
        Assert.Equal(known, Wire.Sentence.Read("as told", new() { Pattern = "{0}", Arguments = { new Wire.Argument { Value = 1, Kind = Wire.ArgumentKind.Mass, Decimals = 4_000_000_000 } } }));
    }

    [Fact]
    public void A_refused_call_tells_every_reason_the_same_way()
    {
        Diagnostic other = new(SiteCheckCodes.PadLoaded, $"RF reads {Kg(2):+0.0}.", "Lift it.");
        Assert.Equal([Told, other], ApiErrors.Of(new StepRefusedException([Told, other]))!.Reasons().Select(r => r.Read()));
        Assert.Equal([Told, other], ApiErrors.Of(new DiagnosticException(Told, other))!.Reasons().Select(r => r.Read()));
        Assert.Equal([Told], ApiErrors.Of(new RefusedException(Told))!.Reasons().Select(r => r.Read()));
    }

    [Fact]
    public void Another_failure_has_no_reasons()
    {
        Assert.Empty(new Grpc.Core.RpcException(new(Grpc.Core.StatusCode.Internal, "lost")).Reasons());
        Assert.Empty(new Grpc.Core.RpcException(new(Grpc.Core.StatusCode.Internal, "lost"), new Grpc.Core.Metadata { { "grpc-status-details-bin", [0x1a, 0x7f, 1] } }).Reasons());
    }

    private static Wire.Diagnostic Travelled(Wire.Diagnostic sent) => Wire.Diagnostic.Parser.ParseFrom(sent.ToByteArray());
}
