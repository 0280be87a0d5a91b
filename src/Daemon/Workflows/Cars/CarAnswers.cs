using ScaleLink.Measure;
using ScaleLink.Weighing.Cars.Interview;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>A car by questions, as it travels.</summary>
internal static class CarAnswers
{
    private const int LongestAnswer = 200;

    public static Wire.ListCarQuestionsResponse Questions(Units units)
    {
        var all = new Wire.ListCarQuestionsResponse();
        all.Questions.AddRange(CarQuestions.All.Select(q => new Wire.CarQuestion
        {
            Key = q.Key, Words = q.Words, Unit = q.Unit(units)?.Sign ?? "", Otherwise = q.OtherwiseText(units), OtherwiseIsGuess = q.Otherwise?.Assumed ?? false,
        }));
        return all;
    }

    public static Wire.DescribeCarResponse Describe(IReadOnlyDictionary<string, string> answers, Units units)
    {
        var (car, answer) = (new CarDescription(), new Wire.DescribeCarResponse());
        foreach (var question in CarQuestions.All)
        {
            var typed = answers.GetValueOrDefault(question.Key, "").Trim();
            var reason = typed.Length > LongestAnswer ? (Sentence)$"At most {LongestAnswer} signs." : car.Answer(question, typed, units);
            if (!reason.IsEmpty)
                answer.Refused.Add(new Wire.CarAnswerRefused { Key = question.Key, Reason = reason.ToString(), TypedReason = Wire.Sentence.Of(reason) });
        }

        if (answer.Refused.Count == 0)
            answer.File = car.File;
        return answer;
    }
}
