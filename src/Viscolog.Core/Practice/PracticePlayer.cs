namespace Viscolog.Core.Practice;

/// <summary>Who plays.</summary>
public enum PracticePlayer
{
    /// <summary>A person.</summary>
    Person,

    /// <summary>Reads 5 s after stirring and believes it.</summary>
    Impatient,

    /// <summary>Always pours 1 % of the base.</summary>
    Bold,

    /// <summary>Does what the program advises.</summary>
    Advised,
}
