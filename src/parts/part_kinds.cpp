// The list of kinds: a new kind adds its header and one line of `Kinds`.
#include "parts/part_kinds.hpp"

#include <algorithm>
#include <array>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/coma_corrector.hpp"
#include "parts/erecting_diagonal.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"

namespace beamfork {

namespace {

template <class... Kind>
struct ListOfKinds {};

using Kinds = ListOfKinds<Refractor,
                          Newtonian,
                          CassegrainMovingMirror,
                          Focuser,
                          Spacer,
                          FilterPlate,
                          MirrorDiagonal,
                          PrismDiagonal,
                          ErectingDiagonal90,
                          ErectingDiagonal45,
                          Shifter,
                          ComaCorrector,
                          SplitterHead,
                          EyepiecePair,
                          Observer,
                          Target>;

// A kind's own fields, then those that it shares with others.
template <class Kind>
std::vector<Field<Kind>> all_fields() {
    std::vector<Field<Kind>> fields = Kind::fields();
    if constexpr (requires(const Kind& kind) { kind.mount; }) append_mount_fields(fields);
    if constexpr (requires(const Kind& kind) { kind.balance; }) append_balance_fields(fields);
    return fields;
}

template <class Kind>
constexpr bool turns_light() {
    if constexpr (requires { Kind::turns_light; }) return Kind::turns_light;
    return false;
}

template <class Kind>
constexpr bool holds_lens() {
    if constexpr (requires { Kind::holds_lens; }) return Kind::holds_lens;
    return false;
}

template <class Kind>
constexpr std::string_view measured_by() {
    if constexpr (requires { Kind::measured_by; }) return Kind::measured_by;
    return "Measure it with calipers.";
}

// Null for kinds without.
template <class Kind>
auto* mount_in(Kind& kind) {
    if constexpr (requires { kind.mount; }) {
        return &kind.mount;
    } else {
        return static_cast<Mount*>(nullptr);
    }
}

template <class Kind>
auto* balance_in(Kind& kind) {
    if constexpr (requires { kind.balance; }) {
        return &kind.balance;
    } else {
        return static_cast<Balance*>(nullptr);
    }
}

template <class Kind>
class Answers final : public KindAnswers {
public:
    [[nodiscard]] PartKind describe() const override {
        PartKind kind{std::string(Kind::key),
                      std::string(Kind::label),
                      std::string(Kind::help),
                      Kind::role,
                      turns_light<Kind>(),
                      holds_lens<Kind>(),
                      Kind{},
                      {}};
        for (const auto& field : fields_) {
            kind.fields.push_back(field.info);
            if (field.info.measured_by.empty())
                kind.fields.back().measured_by = measured_by<Kind>();
        }
        return kind;
    }
    [[nodiscard]] bool equal(const PartBody& one, const PartBody& other) const override {
        return one.get<Kind>() == other.get<Kind>();
    }
    [[nodiscard]] FieldValue value(const PartBody& body, std::size_t field) const override {
        return fields_.at(field).get(body.get<Kind>());
    }
    void set(PartBody& body, std::size_t field, const FieldValue& value) const override {
        fields_.at(field).set(body.get<Kind>(), value);
    }
    [[nodiscard]] std::optional<TakenValue> taken(const PartBody& body,
                                                  std::size_t field) const override {
        const auto& taken = fields_.at(field).taken;
        if (!taken) return std::nullopt;
        return taken(body.get<Kind>());
    }
    [[nodiscard]] std::optional<std::string> contradiction(const PartBody& body) const override {
        return body.get<Kind>().contradiction();
    }
    [[nodiscard]] PartLayout layout(const PartBody& body,
                                    const LayoutContext& context) const override {
        return body.get<Kind>().layout(context);
    }
    [[nodiscard]] std::optional<Millimetres>
    stated_light_path(const PartBody& body) const override {
        if constexpr (requires(const Kind& kind) { kind.stated_light_path; })
            return body.get<Kind>().stated_light_path;
        return std::nullopt;
    }
    [[nodiscard]] const Mount* mount(const PartBody& body) const override {
        return mount_in(body.get<Kind>());
    }
    [[nodiscard]] Mount* mount(PartBody& body) const override { return mount_in(body.get<Kind>()); }
    [[nodiscard]] const Balance* balance(const PartBody& body) const override {
        return balance_in(body.get<Kind>());
    }
    [[nodiscard]] Balance* balance(PartBody& body) const override {
        return balance_in(body.get<Kind>());
    }

private:
    const std::vector<Field<Kind>> fields_ = all_fields<Kind>();
};

template <class... Kind>
constexpr auto keys_of(ListOfKinds<Kind...>) {
    return std::array{Kind::key...};
}

template <class... Kind>
std::vector<std::unique_ptr<const KindAnswers>> answers_in(ListOfKinds<Kind...>) {
    std::vector<std::unique_ptr<const KindAnswers>> all;
    (all.push_back(std::make_unique<const Answers<Kind>>()), ...);
    return all;
}

// Described once: fields of glass read the catalogue, which is not free.
const std::vector<std::unique_ptr<const KindAnswers>>& all_answers() {
    static const auto all = answers_in(Kinds{});
    return all;
}

}  // namespace

std::size_t PartBody::index_of_kind(std::string_view key) {
    static constexpr auto keys = keys_of(Kinds{});
    const auto found = std::find(keys.begin(), keys.end(), key);
    BEAMFORK_EXPECTS(found != keys.end());
    return static_cast<std::size_t>(found - keys.begin());
}

bool PartBody::operator==(const PartBody& other) const {
    return index_ == other.index_ && answers_of(*this).equal(*this, other);
}

const KindAnswers& answers_of(const PartBody& body) { return *all_answers()[body.index()]; }

std::span<const PartKind> part_kinds() {
    static const std::vector<PartKind> kinds = [] {
        std::vector<PartKind> all;
        for (const auto& one : all_answers())
            all.push_back(one->describe());
        return all;
    }();
    return kinds;
}

}  // namespace beamfork
