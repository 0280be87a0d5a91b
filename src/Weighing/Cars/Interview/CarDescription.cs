using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Weighing.Cars.Interview;

/// <summary>A car as far as it has been described. Every answer is judged with all the others.</summary>
internal sealed class CarDescription
{
    private const int LongestName = 80;
    private readonly Dictionary<string, string> _kept = [];
    private readonly Dictionary<string, Stated> _values = [];

    /// <summary>The answers by key, each with its units.</summary>
    public IReadOnlyDictionary<string, string> Kept => _kept;

    /// <summary>The car of the answers; whole once every question has been answered.</summary>
    public CarModel Car => CarQuestions.Car(_kept.GetValueOrDefault("name", ""), _values);

    /// <summary>Its car file.</summary>
    public string File => CarFileText.Of(Car);

    /// <summary>Takes an answer.</summary>
    /// <param name="question">To what.</param>
    /// <param name="typed">As it was typed; empty: nobody knows.</param>
    /// <param name="units">Of an answer that names none.</param>
    /// <returns>Why it is not taken; empty: it is.</returns>
    public Sentence Answer(CarQuestion question, string typed, Units units)
    {
        if (typed.Length == 0)
            return question.Otherwise is { } otherwise ? Take(question, "", otherwise) : question.Lacking;
        if (question.Kind == AnswerKind.Text)
            return PlainText.IsClean(typed, LongestName) ? Take(question, typed, null) : $"At most {LongestName} signs that show.";
        var answer = CarAnswer.Read(typed, question, units);
        if (answer.Value is not { } value)
            return answer.Reason;
        // Everything else is sound: what the whole car is told of is this answer's.
        var with = new Dictionary<string, Stated>(_values) { [question.Key] = value };
        return CarModelCheck.Mistakes(CarQuestions.Car(_kept.GetValueOrDefault("name", ""), with)) is [var wrong, ..] ? wrong.Whole : Take(question, answer.Kept, value);
    }

    private Sentence Take(CarQuestion question, string kept, Stated? value)
    {
        _kept[question.Key] = kept;
        if (value is { } known)
            _values[question.Key] = known;
        return default;
    }
}
