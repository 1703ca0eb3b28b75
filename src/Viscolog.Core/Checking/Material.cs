using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>Something that a bench keeps to use again. The set of cases is closed.</summary>
public abstract record Material
{
    private protected Material()
    {
    }

    /// <summary>Its name, once among those of its kind.</summary>
    public abstract string Name { get; }

    /// <summary>A note.</summary>
    public string? Note { get; init; }

    /// <summary>Whether it is no longer offered for new runs. Nothing that was used is deleted.</summary>
    public bool IsRetired { get; init; }

    /// <summary>A base.</summary>
    /// <param name="Base">The base; it has a name.</param>
    public sealed record OfBase(PotBase Base) : Material
    {
        /// <inheritdoc/>
        /// <exception cref="ArgumentException">The base has none.</exception>
        public override string Name { get; } = Guard.NotBlank(Base.Name);

        /// <summary>The base; it has a name.</summary>
        public PotBase Base { get; } = Base;
    }

    /// <summary>A thickener.</summary>
    /// <param name="Thickener">The thickener; it has a name.</param>
    public sealed record OfThickener(Thickener Thickener) : Material
    {
        /// <inheritdoc/>
        /// <exception cref="ArgumentException">The thickener has none.</exception>
        public override string Name { get; } = Guard.NotBlank(Thickener.Name);

        /// <summary>The thickener; it has a name.</summary>
        public Thickener Thickener { get; } = Thickener;
    }

    /// <summary>A method.</summary>
    /// <param name="Method">The method as the bench has it.</param>
    public sealed record OfMethod(MethodInUse Method) : Material
    {
        /// <inheritdoc/>
        public override string Name => Method.Name;
    }

    /// <summary>A specification.</summary>
    /// <param name="Specification">The specification.</param>
    public sealed record OfSpecification(Specification Specification) : Material
    {
        /// <inheritdoc/>
        public override string Name => Specification.Name;
    }

    /// <summary>An instrument that sends its readings by itself.</summary>
    /// <param name="Name">Its name; not empty.</param>
    /// <param name="Reads">What its lines say, in the words of whoever reads them; not empty.</param>
    /// <param name="Source">Where its lines come from; null where that is said each time.</param>
    public sealed record OfInstrument(string Name, string Reads, string? Source) : Material
    {
        /// <inheritdoc/>
        /// <exception cref="ArgumentException">It is blank.</exception>
        public override string Name { get; } = Guard.NotBlank(Name);

        /// <summary>What its lines say; not empty.</summary>
        /// <exception cref="ArgumentException">It is blank.</exception>
        public string Reads { get; } = Guard.NotBlank(Reads);
    }
}

/// <summary>A method as a bench has it.</summary>
/// <param name="Name">The bench's own name for it; not empty.</param>
/// <param name="Method">The method.</param>
/// <param name="Repeatability">Relative standard deviation of the bench's own repeat readings; null for the method's default.</param>
public sealed record MethodInUse(string Name, Method Method, Percentage? Repeatability)
{
    /// <summary>The bench's own name for it; not empty.</summary>
    /// <exception cref="ArgumentException">It is blank.</exception>
    public string Name { get; init => field = Guard.NotBlank(value, nameof(Name)); } = Guard.NotBlank(Name);

    /// <summary>The repeatability in force.</summary>
    public Percentage RepeatabilityInForce => Repeatability ?? Method.Repeatability;
}
