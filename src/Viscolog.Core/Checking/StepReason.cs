using Viscolog.Core.Advising;

namespace Viscolog.Core.Checking;

/// <summary>Why a step comes next. The set of cases is closed.</summary>
public abstract record StepReason
{
    private protected StepReason()
    {
    }

    /// <summary>For the doubt that keeps the verdict open.</summary>
    /// <param name="Doubt">The doubt.</param>
    public sealed record Doubtful(Doubt Doubt) : StepReason;

    /// <summary>The thickener swells only at the right pH.</summary>
    public sealed record SwellsAtPh : StepReason;

    /// <summary>The body goes with the pH.</summary>
    public sealed record BodyGoesWithPh : StepReason;

    /// <summary>The pot may still build.</summary>
    public sealed record MayStillBuild : StepReason;

    /// <summary>The readings fall over time: let it rest and read until two agree.</summary>
    public sealed record LetItRest : StepReason;

    /// <summary>No number of readings that anybody takes decides.</summary>
    /// <param name="More">How many would; null where none would.</param>
    /// <param name="Greatest">The greatest part of the uncertainty that something can be done about; null where there is none.</param>
    public sealed record ReadingsDecideNothing(int? More, UncertaintyPart? Greatest) : StepReason;

    /// <summary>The string is too short.</summary>
    public sealed record StringTooShort : StepReason;

    /// <summary>The string is too long.</summary>
    public sealed record StringTooLong : StepReason;

    /// <summary>The string can't be told from these samples.</summary>
    public sealed record StringUnsure : StepReason;

    /// <summary>For what is advised at the bench.</summary>
    /// <param name="Advice">The advice.</param>
    /// <param name="IsShort">Whether the body is short, or over.</param>
    public sealed record Advised(Advice Advice, bool IsShort) : StepReason;

    /// <summary>No correction is advised.</summary>
    /// <param name="Outcome">The study that was to advise it.</param>
    /// <param name="IsShort">Whether the body is short, or over.</param>
    public sealed record NotAdvised(StudyOutcome Outcome, bool IsShort) : StepReason;

    /// <summary>The run names no thickener to correct the body by.</summary>
    /// <param name="IsShort">Whether the body is short, or over.</param>
    public sealed record NoThickener(bool IsShort) : StepReason;

    /// <summary>The run's curve says otherwise than the readings of the batch.</summary>
    /// <param name="IsShort">Whether they say that the body is short, or over.</param>
    public sealed record CurveDisagrees(bool IsShort) : StepReason;
}
