/* sheets/signs.h - signs behind a figure that send the reader to the foot of the page:
 * not seen in a copy of its source; common practice. */
#ifndef SHEETS_SIGNS_H
#define SHEETS_SIGNS_H

#define DAGGER "\xE2\x80\xA0"
#define DOUBLE_DAGGER "\xE2\x80\xA1"

#endif
