import type { ButtonHTMLAttributes, ReactNode } from 'react';
import styles from './Button.module.css';
import { Icon, type IconName } from './Icon';

/** `primary` is the one thing to do here; `quiet` sits inside text and tables. */
type ButtonKind = 'plain' | 'primary' | 'quiet';

interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className'> {
  kind?: ButtonKind;
  /** There is nothing to do now. It keeps the focus of whoever has just done the last of it, as a browser's own would not. */
  disabled?: boolean;
  icon?: IconName;
  children: ReactNode;
}

export function Button({
  kind = 'plain',
  icon,
  children,
  type = 'button',
  disabled = false,
  onClick,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-disabled={disabled || rest['aria-disabled'] || undefined}
      onClick={disabled ? (event) => event.preventDefault() : onClick}
      className={`${styles.button} ${styles[kind]}`}
    >
      {icon && <Icon name={icon} />}
      {children}
    </button>
  );
}

interface ButtonLinkProps {
  href: string;
  kind?: ButtonKind;
  icon?: IconName;
  /** Leaves what stands here as it is. */
  newWindow?: boolean;
  children: ReactNode;
}

/** Looks like a button and is a link, because it leads somewhere. */
export function ButtonLink({ href, kind = 'plain', icon, newWindow = false, children }: ButtonLinkProps) {
  return (
    <a
      href={href}
      {...(newWindow && { target: '_blank', rel: 'noopener' })}
      className={`${styles.button} ${styles[kind]}`}
    >
      {icon && <Icon name={icon} />}
      {children}
    </a>
  );
}
