using Told = ScaleLink.Measure.Diagnostics.Diagnostic;

namespace ScaleLink.Api.V1;

public sealed partial class Diagnostic
{
    /// <summary>As it travels. When it began is told by who knows the daemon's clock.</summary>
    public static Diagnostic Of(Told told)
    {
        ArgumentNullException.ThrowIfNull(told);
        var wire = new Diagnostic
        {
            Code = told.Code.Text, Message = told.Message.ToString(), Remedy = told.Remedy.ToString(), Where = told.Where,
            TypedMessage = Sentence.Of(told.Message), TypedRemedy = Sentence.Of(told.Remedy),
        };
        if (told.Line is { } line)
            wire.Line = (uint)line;
        return wire;
    }

    /// <summary>For showing, in the units of whoever shows it.</summary>
    public Told Read() => new(Measure.Diagnostics.Code.Read(Code), Sentence.Read(Message, TypedMessage), Sentence.Read(Remedy, TypedRemedy))
    {
        Where = Where, Line = HasLine ? (int)Line : null,
    };
}
