/* check-rules.h - breaches of the optional rules, found from the wall and the pieces alone
 *
 * Part of check-layout: docs/rules.md says what each rule asks. */
#pragma once

#include "check-column.h"

/* Appends a Breach for every rule that is a must and not kept. */
void check_find_rule_breaches (const Check *check, GArray *breaches);
/* How often the rule is not kept, be it a must or preferred. */
gint32 check_count_broken (const Check *check, RuleKind kind);
