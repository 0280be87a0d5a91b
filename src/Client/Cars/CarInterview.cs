using ScaleLink.Client.Runtime;
using ScaleLink.Measure.Sentences;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Client.Cars;

/// <summary>
/// Asks what is needed of a car, one question a line. "&lt;" goes back to the question before, an empty answer takes what is shown, "?" says that nobody
/// knows, "!" or the end of the input leaves; a wrong answer is asked again with the reason. Every answer is in the draft before the next question.
/// </summary>
/// <param name="shell">Where to write.</param>
/// <param name="draft">Where answers are kept.</param>
/// <param name="answer">The next answer; null when there will be none.</param>
internal sealed class CarInterview(Shell shell, CarDraft draft, Func<string?> answer)
{
    private const int LongestName = 80;
    private readonly Dictionary<string, string> _kept = [];
    private readonly Dictionary<string, Stated> _values = [];
    private bool _isToldOfDraft;

    /// <summary>The car; null when it was left before the questions ended.</summary>
    public CarModel? Run()
    {
        shell.WriteLine($"A number, perhaps with a unit and an interval of 95 %: 70, 70 +-3, 400 lb/in, 400 lb/in {shell.Glyphs.PlusMinus}5 %. Motion ratio = spring travel / wheel travel.");
        shell.WriteLine("Enter alone takes what stands in brackets; a guess is marked as one in the file. < goes back, ? takes an answer back, ! leaves and keeps the answers.");
        var at = TakeUp();
        while (at < CarQuestions.All.Count)
        {
            var question = CarQuestions.All[at];
            var line = Line(question);
            if (line is null or "!")
                return null;
            if (line == "<")
                at = Math.Max(0, at - 1);
            else if (Answer(question, line switch { "?" => "", "" => Before(question), _ => line }) is { } reason)
                shell.WriteLine($"  {reason}");
            else
            {
                at++;
                Keep();
            }
        }

        return CarQuestions.Car(_kept["name"], _values);
    }

    // Answers that mean nothing any more are asked for again, with all that come after them.
    private int TakeUp()
    {
        var answers = draft.Read();
        if (answers is null)
            shell.WriteLine($"  {PeerText.Clean(draft.Path, 200)} cannot be read: it is left out, and the questions begin anew.");
        var at = 0;
        while (answers is not null && at < CarQuestions.All.Count && answers.TryGetValue(CarQuestions.All[at].Key, out var kept) && Answer(CarQuestions.All[at], kept) is null)
            at++;
        if (at > 0)
            shell.WriteLine($"  Taken up: {at} of {CarQuestions.All.Count} answers of {PeerText.Clean(draft.Path, 200)}. < goes back to them.");
        return at;
    }

    /// <summary>Takes an answer; gives the reason when it cannot be.</summary>
    private string? Answer(CarQuestion question, string line)
    {
        if (question.Kind == AnswerKind.Text)
            return line.Length == 0 ? "A name is needed here, so that records can be told apart."
                : !PlainText.IsClean(line, LongestName) ? $"At most {LongestName} signs that show."
                : Take(question, line, null);
        if (line.Length == 0)
            return question.Otherwise is { } otherwise ? Take(question, "", otherwise) : "A number is needed here, such as 2450, 2450 +-3 or 96.5 in.";
        var answer = CarAnswer.Read(line, question, shell.Glyphs.Units);
        if (answer.Value is not { } value)
            return answer.Reason;
        // Everything else is sound: what the whole car is told of is this answer's.
        var with = new Dictionary<string, Stated>(_values) { [question.Key] = value };
        return CarModelCheck.Mistakes(CarQuestions.Car(_kept.GetValueOrDefault("name", ""), with)) is [var wrong, ..]
            ? shell.Glyphs.Tell(wrong)
            : Take(question, answer.Kept, value);
    }

    private string? Take(CarQuestion question, string kept, Stated? value)
    {
        _kept[question.Key] = kept;
        if (value is { } known)
            _values[question.Key] = known;
        return null;
    }

    private void Keep()
    {
        if (draft.Keep(_kept) || _isToldOfDraft)
            return;
        _isToldOfDraft = true;
        shell.WriteLine($"  The answers cannot be kept in {PeerText.Clean(draft.Path, 200)}: leaving now loses them.");
    }

    private string Before(CarQuestion question) => _kept.GetValueOrDefault(question.Key, "");

    private string? Line(CarQuestion question)
    {
        shell.Out.Write($"{shell.Glyphs.Say(question.Line(shell.Glyphs, PeerText.Clean(Before(question), 40)))}: ");
        shell.Out.Flush();
        return answer()?.Trim();
    }
}
