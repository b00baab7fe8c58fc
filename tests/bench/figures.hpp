#pragma once

#include <chrono>
#include <ctime>
#include <string>
#include <vector>

namespace beadbook::bench {

/// What was measured, as lines for a reader or as one JSON object to keep and to compare.
class Figures {
public:
    explicit Figures(bool json) : json_(json) {}

    /// One number: `name` says of what ("judge/iso-5817"), `unit` in what ("us a coupon").
    void add(const std::string &name, double value, const std::string &unit, const std::string &note = "");
    /// How many times `b` is in `a`; both were added before.
    void ratio(const std::string &a, const std::string &b, const std::string &bar = "");
    /// Prints the JSON object, if it was asked for.
    void finish() const;

private:
    struct Figure {
        std::string name, unit;
        double value;
    };
    const Figure &of(const std::string &name) const;

    bool json_;
    std::vector<Figure> all_;
};

/// Seconds on the clock: of what other processes do, or the disk.
double seconds_of(const auto &work) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

/// Seconds of the processor, so that a machine that is shared counts less.
double processor_seconds_of(const auto &work) {
    const std::clock_t begin = std::clock();
    work();
    return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

double median(std::vector<double> all);

} // namespace beadbook::bench
