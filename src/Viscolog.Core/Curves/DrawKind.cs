namespace Viscolog.Core.Curves;

/// <summary>One kind of draw, mostly one shape's.</summary>
/// <param name="Dimension">How many numbers a draw has.</param>
/// <param name="Prior">Their prior; its total is the kind's weight over all kinds.</param>
/// <param name="Likelihood">Makes the log likelihood of a draw, each with a workspace of its own.</param>
/// <param name="Place">Where in the table of random numbers to begin.</param>
internal sealed record DrawKind(int Dimension, Mixture Prior, Func<DrawLikelihood> Likelihood, int Place);
