/* reckon/arc.h - heat, time and gas of an arc, and filler with stub and spatter. */
#ifndef RECKON_ARC_H
#define RECKON_ARC_H

#include "reckon/weight.h"

/* Heat input in kJ/in: 60 V I / (1000 S), S in in/min, times an arc efficiency of
 * 0 to 1 when one is wanted (AWS and ASME take 1). ASME IX QW-409.1(a), from memory;
 * the same formula stands in published worked examples. */
double heat_input_kj_in(double volts, double amps, double speed_in_min,
    double efficiency);

/* Arc hours: length / speed for each pass; weld metal / deposition rate. Clock hours:
 * arc hours / operating factor. Definitions. */
double arc_hours_by_length(double length_mm, double speed_in_min, double passes);
double arc_hours_by_weight(double deposit_lb, double rate_lb_h);
double clock_hours(double arc_hours, double operating_percent);

/* Percent of weld metal from filler when an electrode is thrown away at another stub
 * than the 2 in that the SMAW rows hold: row (L - stub) / (L - 2 in). Filler metal
 * data book, stub correction; electrode and stub in mm. */
double efficiency_at_stub(double row_percent, double electrode_mm, double stub_mm);
/* The rest after a further loss to spatter: percent (100 - spatter) / 100. */
double efficiency_after_spatter(double percent, double spatter_percent);

/* Deposit in lb/h of a solid wire: its cross section x feed x density, less what is
 * lost. Geometry; feed in in/min. */
double wire_deposit_lb_h(double dia_mm, double feed_in_min, double density_lb_in3,
    double efficiency_percent);

/* Gas in ft3: flow x arc hours. Purge of a pipe before the root: volumes of the bore
 * changed / flow, minutes. Definitions. */
double gas_ft3(double flow_cfh, double arc_hours);
double purge_minutes(double bore_mm, double length_mm, double changes,
    double flow_cfh);

#endif
