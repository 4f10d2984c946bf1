"""The measure of what is heard, written a second time from its sources, for spectra of any bins."""
import numpy as np
from scipy.optimize import brentq
from scipy import signal

erb = lambda f: 24.673 * (0.004368 * f + 1)          # ANSI/ASA S3.4-2007

def bands():
    edges = [50.0]
    while edges[-1] < 16000:
        low = edges[-1]
        top = brentq(lambda high: high - low - erb((low + high) / 2), low, 3 * low + 1000)
        edges.append(min(top, 16000.0))
    return np.array(edges)

def k_weighting(f):                                    # ITU-R BS.1770, tables 1 and 2, 48 kHz
    shelf = ([1.53512485958697, -2.69169618940638, 1.19839281085285], [1, -1.69065929318241, 0.73248077421585])
    high = ([1.0, -2.0, 1.0], [1, -1.99004745483398, 0.99007225036621])
    w = 2 * np.pi * f / 48000
    return np.prod([np.abs(signal.freqz(b, a, w)[1]) ** 2 for b, a in (shelf, high)], axis=0)

def speaker(f):                                        # high-pass 100 Hz Q 1, bell +4 dB at 3 kHz Q 1, Butterworth 5th at 5 kHz
    s = 2j * np.pi * f
    w0 = 2 * np.pi * 100
    high = s ** 2 / (s ** 2 + w0 * s + w0 ** 2)
    w1, A = 2 * np.pi * 3000, 10 ** (4 / 40)
    bell = (s ** 2 + A * w1 * s + w1 ** 2) / (s ** 2 + w1 / A * s + w1 ** 2)
    b, a = signal.butter(5, 2 * np.pi * 5000, analog=True)
    return np.abs(high * bell * signal.freqs(b, a, 2 * np.pi * f)[1]) ** 2

def threshold(f):                                      # Terhardt, Stoll and Seewann 1982, dB SPL
    k = f / 1000
    return 3.64 * k ** -0.8 - 6.5 * np.exp(-0.6 * (k - 3.3) ** 2) + 1e-3 * k ** 4

def heard(f, energy, through="speaker"):
    """Excitation level in the middle of every band, dB; energy at each of the frequencies f."""
    inside = (f >= 50) & (f < 16000)
    f, energy = f[inside], energy[inside] * (speaker(f[inside]) if through == "speaker" else 1)
    energy = energy * 1e8 / np.sum(energy * k_weighting(f))   # 80 dB by the K-weighting
    edges = bands()
    levels = []
    for centre in (edges[:-1] + edges[1:]) / 2:               # Glasberg and Moore 1990, roex(p), 65 dB in an ERB
        p = 4 * centre / erb(centre)
        lower = p * (1 - 0.35 * (65 - 51) / (4 * 1000 / erb(1000)))
        g = np.abs(f - centre) / centre
        pg = np.where(f < centre, lower, p) * g
        power = np.sum((1 + pg) * np.exp(-pg) * energy)
        levels.append(10 * np.log10(power + 10 ** (threshold(centre) / 10) + 10 ** 2))
    return np.array(levels)
