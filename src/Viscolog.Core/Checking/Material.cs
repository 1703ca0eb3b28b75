using Viscolog.Core.Pots;

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
        public override string Name => Base.Name ?? throw new InvalidOperationException("a base that is kept has a name");
    }

    /// <summary>A thickener.</summary>
    /// <param name="Thickener">The thickener.</param>
    public sealed record OfThickener(Thickener Thickener) : Material
    {
        /// <inheritdoc/>
        public override string Name => Thickener.Name;
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
}
