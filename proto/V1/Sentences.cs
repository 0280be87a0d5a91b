using Said = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Api.V1;

public sealed partial class Loads
{
    /// <summary>Why the verdict is what it is.</summary>
    public Said RemarkSaid => Sentence.Read(Remark, TypedRemark);
}

public sealed partial class Check
{
    /// <summary>What was found or set.</summary>
    public Said ValueSaid => Sentence.Read(Value, TypedValue);
}

public sealed partial class LikelyCause
{
    /// <summary>What seems to have happened.</summary>
    public Said Said => Sentence.Read(Words, TypedWords);
}

public sealed partial class PerchPlan
{
    /// <summary>Other ways when the target is out of reach.</summary>
    public IEnumerable<Said> Ways => Alternatives.Select((way, i) => Sentence.Read(way, TypedAlternatives.ElementAtOrDefault(i)));
}

public sealed partial class SiteCheckPart
{
    /// <summary>What it is, with its size.</summary>
    public Said Said => Sentence.Read(Words, TypedWords);
}

/// <summary>What a plan costs and brings, as people read it.</summary>
public sealed partial class PlannedProcedure
{
    /// <summary>In one line.</summary>
    public Said WordsSaid => Sentence.Read(Words, TypedWords);
}

public sealed partial class ProcedureResult
{
    /// <summary>Held against the accuracy class.</summary>
    public Said GradeSaid => Sentence.Read(AccuracyClass, TypedAccuracyClass);

    /// <summary>What it comes to, in one sentence.</summary>
    public Said ConclusionSaid => Sentence.Read(Conclusion, TypedConclusion);
}
