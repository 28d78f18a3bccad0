/* out/sarif.h - the findings in SARIF 2.1.0, the OASIS format for what checkers find.
 *
 * One run, with every finding name as a rule. Columns count characters
 * (unicodeCodePoints), as in the report; files are relative to the program folder.
 * A waived finding carries a suppression with its reason, role and end. */
#ifndef OUT_SARIF_H
#define OUT_SARIF_H

#include "base/buf.h"
#include "base/finding.h"

void report_sarif(struct buf *b, const struct findings *f, const struct sources *s,
    str version);

#endif
