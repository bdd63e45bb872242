using System.Globalization;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Decisions;

/// <summary>Holds a decision against the job it is said of.</summary>
internal static class DecisionCheck
{
    private static readonly string Open = Words<FindingState>.Standard.Of(FindingState.Open);

    /// <summary>Every fault; none: it can be stored.</summary>
    public static IReadOnlyList<Violation> Faults(DecisionBody body, DecidedJob job)
    {
        var faults = DecisionBody.NewFaults();
        if (body.Decision == DecisionWord.ApproveSample)
            CheckApproval(body, job, faults);
        else if (body.Findings is { } numbers)
            CheckNumbers(body.Decision, numbers, job, faults);
        else if (body.Decision == DecisionWord.Accept && !job.Result.Findings.Any(finding => finding.State == Open))
            faults.Add("/decision", ViolationCodes.Contradicts, "This job has no open finding to accept.");
        return faults.Violations;
    }

    private static void CheckApproval(DecisionBody body, DecidedJob job, Faults faults)
    {
        if (body.Findings is not null)
            faults.Add("/findings", ViolationCodes.Contradicts, "A sample is approved as a whole; accept findings with a decision of its own.");
        if (!job.IsSewn)
            faults.Add("/decision", ViolationCodes.Contradicts, $"The verdict of this job is {job.Row.Verdict}: there was no tape to sew a sample from.");
    }

    private static void CheckNumbers(DecisionWord decision, IReadOnlyList<int> numbers, DecidedJob job, Faults faults)
    {
        for (var i = 0; i < numbers.Count; i++)
        {
            var pointer = string.Create(CultureInfo.InvariantCulture, $"/findings/{i}");
            if (numbers.Take(i).Contains(numbers[i]))
                faults.Add(pointer, ViolationCodes.Contradicts, $"{Named(numbers[i])} stands twice.");
            else
                CheckNumber(decision, numbers[i], pointer, job, faults);
        }
    }

    /// <summary>What was accepted before may be rejected by its number too.</summary>
    private static void CheckNumber(DecisionWord decision, int number, string pointer, DecidedJob job, Faults faults)
    {
        if (job.Result.Findings.FirstOrDefault(finding => finding.Number == number) is { } found)
        {
            if (found.State != Open)
                faults.Add(pointer, ViolationCodes.Contradicts, $"{Named(number)} is {found.State}; only open ones can be decided on.");
        }
        else if (job.Result.Accepted.Any(accepted => accepted.Number == number))
        {
            if (decision == DecisionWord.Accept)
                faults.Add(pointer, ViolationCodes.Contradicts, $"{Named(number)} is accepted already.");
        }
        else
        {
            faults.Add(pointer, ViolationCodes.UnknownId, string.Create(CultureInfo.InvariantCulture, $"This job has no finding {number}."));
        }
    }

    private static string Named(int number) => string.Create(CultureInfo.InvariantCulture, $"Finding {number}");
}
