using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Viscolog.Core.Fitting;

/// <summary>
/// The linearised problem at a point: MathNet's QR of the Jacobian with its columns scaled to length 1, and what it tells about the point.
/// </summary>
internal sealed class Curvature
{
    // Residuals carry rounding of about this many units in the last place of the terms they are made of.
    private const double RoundingUnits = 10 * 2.220446049250313e-16;

    private readonly double[] _lengths;
    private readonly double[,] _inverse;

    private Curvature(FitPoint point, double[] lengths, Matrix<double> r, double[,] inverse, double[] projected)
    {
        _lengths = lengths;
        _inverse = inverse;
        int k = lengths.Length;
        double projection = 0;
        double size = 0;
        double sumR = 0;
        double sumInverse = 0;
        for (int j = 0; j < k; j++)
        {
            projection += projected[j] * projected[j];
            size = Math.Max(size, lengths[j] * Math.Abs(point.Parameters[j]));
            for (int i = 0; i <= j; i++)
            {
                sumR += r[i, j] * r[i, j];
                sumInverse += inverse[i, j] * inverse[i, j];
            }
        }

        Condition = Math.Sqrt(sumR * sumInverse);
        double norm = Math.Sqrt(point.SumOfSquares);
        Rounding = RoundingUnits * size;
        Offset = norm > Rounding ? Math.Sqrt(projection) / norm : 0;
        RoundingOffset = norm > Rounding ? Rounding / norm : 1;
        Step = Times(inverse, lengths, projected);
    }

    /// <summary>
    /// The share of the residuals that lies along the columns of the Jacobian, |Qᵀr| / |r|: 0 at a stationary point, 0 where the residuals
    /// are rounding alone. No column's cosine with the residuals is larger. Source: D. M. Bates and D. G. Watts, Technometrics 23 (1981)
    /// 179–183, their criterion without its degrees of freedom (from memory).
    /// </summary>
    public double Offset { get; }

    /// <summary>The length of the residuals that rounding alone can make.</summary>
    public double Rounding { get; }

    /// <summary>The offset that rounding of the residuals alone can make.</summary>
    public double RoundingOffset { get; }

    /// <summary>Condition of the scaled Jacobian (Frobenius norm; at least the number of parameters).</summary>
    public double Condition { get; }

    /// <summary>The full Gauss–Newton step.</summary>
    public double[] Step { get; }

    /// <summary>Factors the Jacobian; null where a column vanishes or depends on the others to rounding.</summary>
    public static Curvature? At(FitPoint point, double[,] jacobian)
    {
        int n = jacobian.GetLength(0);
        int k = jacobian.GetLength(1);
        double[] columns = ColumnLengths(jacobian);
        if (Array.Exists(columns, length => length == 0 || !double.IsFinite(length)))
        {
            return null;
        }

        Matrix<double> scaled = Matrix<double>.Build.Dense(n, k, (i, j) => jacobian[i, j] / columns[j]);
        QR<double> qr = scaled.QR(QRMethod.Thin);
        Matrix<double> r = qr.R;
        double[,]? inverted = Inverse(r);
        if (inverted is null)
        {
            return null;
        }

        Vector<double> projected = qr.Q.TransposeThisAndMultiply(Vector<double>.Build.Dense(point.Residuals));
        return new Curvature(point, columns, r, inverted, projected.ToArray());
    }

    /// <summary>The lengths of the columns.</summary>
    public static double[] ColumnLengths(double[,] jacobian)
    {
        var columns = new double[jacobian.GetLength(1)];
        for (int j = 0; j < columns.Length; j++)
        {
            double sum = 0;
            for (int i = 0; i < jacobian.GetLength(0); i++)
            {
                sum += jacobian[i, j] * jacobian[i, j];
            }

            columns[j] = Math.Sqrt(sum);
        }

        return columns;
    }

    /// <summary>(R D)⁻¹, upper triangular: the inverse of a square root of JᵀJ.</summary>
    public double[,] InverseRoot()
    {
        var root = (double[,])_inverse.Clone();
        for (int j = 0; j < _lengths.Length; j++)
        {
            for (int m = j; m < _lengths.Length; m++)
            {
                root[j, m] /= _lengths[j];
            }
        }

        return root;
    }

    /// <summary>The standard error of a parameter where the residuals' standard deviation is 1.</summary>
    public double Spread(int parameter)
    {
        double sum = 0;
        for (int m = parameter; m < _lengths.Length; m++)
        {
            sum += _inverse[parameter, m] * _inverse[parameter, m];
        }

        return Math.Sqrt(sum) / _lengths[parameter];
    }

    private static double[,]? Inverse(Matrix<double> r)
    {
        int k = r.ColumnCount;
        var result = new double[k, k];
        for (int j = 0; j < k; j++)
        {
            // A diagonal at rounding level means that the column adds nothing to those before it.
            if (!(Math.Abs(r[j, j]) > 1e-15))
            {
                return null;
            }

            result[j, j] = 1 / r[j, j];
            for (int i = j - 1; i >= 0; i--)
            {
                double sum = 0;
                for (int m = i + 1; m <= j; m++)
                {
                    sum += r[i, m] * result[m, j];
                }

                result[i, j] = -sum / r[i, i];
            }
        }

        return result;
    }

    private static double[] Times(double[,] inverse, double[] lengths, double[] projected)
    {
        var step = new double[lengths.Length];
        for (int j = 0; j < step.Length; j++)
        {
            for (int m = j; m < step.Length; m++)
            {
                step[j] -= inverse[j, m] * projected[m];
            }

            step[j] /= lengths[j];
        }

        return step;
    }
}
