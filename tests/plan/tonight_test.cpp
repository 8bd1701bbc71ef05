#include "base/assets.hpp"
#include "document/drawer_file.hpp"
#include "plan/tonight.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("one piece in place of another is one exchange, and what stays is none") {
    CHECK(exchanges_between({1, 2, 3}, {1, 2, 3}) == 0);
    CHECK(exchanges_between({1, 2, 3}, {1, 4, 3}) == 1);
    CHECK(exchanges_between({1, 2, 3}, {1, 3}) == 1);
    CHECK(exchanges_between({1, 3}, {1, 5, 6, 3}) == 2);
    CHECK(exchanges_between({1, 2, 3, 4}, {1, 3, 2, 4}) == 1);
    CHECK(exchanges_between({1, 2, 3, 4}, {1, 3, 5, 4}) == 1);
}

TEST_CASE("tonight's row goes up in power, no step is small, and its orders lead from each train "
          "to the next") {
    const auto text = asset("assets/drawers/harrier-hill.drawer.toml");
    const Drawer drawer = read_drawer(std::string(text.value()), "harrier-hill").value().drawer;
    const Plan plan = plan_trains(drawer).value();
    const auto rows = tonights_rows(plan);
    REQUIRE_FALSE(rows.empty());
    for (const TonightsRow& row : rows) {
        CAPTURE(row.telescope);
        REQUIRE_FALSE(row.steps.empty());
        for (std::size_t i = 0; i < row.steps.size(); ++i) {
            const RowStep& step = row.steps[i];
            CHECK(step.train.result(ResultId::failures) == 0);
            REQUIRE_FALSE(step.orders.empty());
            if (i == 0) continue;
            const RowStep& before = row.steps[i - 1];
            CHECK(step.train.result(ResultId::magnification)
                  > 1.24 * before.train.result(ResultId::magnification));
            // What comes and goes is named, and nothing else.
            std::string orders;
            for (const std::string& order : step.orders)
                orders += order + "; ";
            CAPTURE(orders);
            const auto now = plan.parts_of(step.train.train);
            const auto then = plan.parts_of(before.train.train);
            for (const std::size_t part : now) {
                const bool is_new = std::find(then.begin(), then.end(), part) == then.end();
                if (is_new) CHECK(orders.find("the " + plan.part(part).name) != std::string::npos);
            }
            for (const std::size_t part : then) {
                const bool goes = std::find(now.begin(), now.end(), part) == now.end();
                if (goes) CHECK(orders.find("the " + plan.part(part).name) != std::string::npos);
            }
        }
    }
}
